package broodtide;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The order of all rooms: each uses only those before it; and who may use which library. */
class ArchitectureTest {
  private static final List<String> ORDER =
      List.of(
          "measure",
          "season",
          "colony",
          "mite",
          "control",
          "engine",
          "wash",
          "fit",
          "study",
          "compare",
          "chart",
          "report",
          "classroom",
          "cli");

  private static final JavaClasses ALL =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("broodtide");

  @Test
  void eachRoomUsesOnlyThoseBeforeIt() {
    for (int i = 0; i < ORDER.size(); i++) {
      String[] later =
          ORDER.subList(i + 1, ORDER.size()).stream()
              .map(room -> "broodtide." + room + "..")
              .toArray(String[]::new);
      if (later.length > 0) {
        noClasses()
            .that()
            .resideInAPackage("broodtide." + ORDER.get(i) + "..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(later)
            .allowEmptyShould(true)
            .check(ALL);
      }
    }
  }

  /** A chart is given numbers and words; what they mean is not its business. */
  @Test
  void chartsKnowNothingOfBees() {
    noClasses()
        .that()
        .resideInAPackage("broodtide.chart..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(
            ORDER.stream()
                .filter(room -> !room.equals("chart"))
                .map(room -> "broodtide." + room + "..")
                .toArray(String[]::new))
        .check(ALL);
  }

  @Test
  void onlyChartsSeeThePlottingLibrary() {
    noClasses()
        .that()
        .resideOutsideOfPackage("broodtide.chart..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("org.knowm.xchart..")
        .check(ALL);
  }

  @Test
  void noCircles() {
    slices().matching("broodtide.(*)..").should().beFreeOfCycles().check(ALL);
  }

  @Test
  void commandLineAndDrawingStayInTheRunner() {
    String[] inner = {
      "broodtide.measure..", "broodtide.season..", "broodtide.colony..", "broodtide.mite..",
      "broodtide.control..", "broodtide.engine..", "broodtide.wash..", "broodtide.fit..",
      "broodtide.study..", "broodtide.compare.."
    };
    noClasses()
        .that()
        .resideInAnyPackage(inner)
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("picocli..", "java.awt..", "javax.imageio..", "com.sun.net..")
        .check(ALL);
  }
}
