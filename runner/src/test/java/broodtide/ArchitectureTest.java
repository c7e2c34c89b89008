package broodtide;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import broodtide.measure.RefusedException;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Set;
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
          "flow",
          "wash",
          "fit",
          "forms",
          "table",
          "catalog",
          "study",
          "lesson",
          "assessment",
          "decision",
          "words",
          "results",
          "chart",
          "files",
          "terminal",
          "report",
          "web",
          "classroom",
          "page",
          "cli");

  private static final JavaClasses ALL =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .withImportOption(location -> !location.contains("-tests.jar"))
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

  /** A chart is given numbers and words; what they mean is not its business. It may refuse. */
  @Test
  void chartsKnowNothingOfBees() {
    noClasses()
        .that()
        .resideInAPackage("broodtide.chart..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(
            ORDER.stream()
                .filter(room -> !room.equals("chart") && !room.equals("measure"))
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
  void filesKnowNothingOfBees() {
    noClasses()
        .that()
        .resideInAPackage("broodtide.files..")
        .should()
        .dependOnClassesThat(
            JavaClass.Predicates.resideInAPackage("broodtide..")
                .and(
                    JavaClass.Predicates.resideOutsideOfPackages(
                        "broodtide.files..", "broodtide.measure..")))
        .check(ALL);
  }

  @Test
  void commandLineAndDrawingStayInTheRunner() {
    String[] inner =
        ORDER.subList(0, ORDER.indexOf("results") + 1).stream()
            .map(room -> "broodtide." + room + "..")
            .toArray(String[]::new);
    noClasses()
        .that()
        .resideInAnyPackage(inner)
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("picocli..", "java.awt..", "javax.imageio..", "com.sun.net..")
        .check(ALL);
  }

  @Test
  void onlyRefusalsAreToldToUsers() {
    classes()
        .that()
        .areAssignableTo(RuntimeException.class)
        // the first two never leave their package, the third is the command line's own
        .and()
        .doNotHaveSimpleName("Unread")
        .and()
        .doNotHaveSimpleName("NothingFits")
        .and()
        .doNotHaveSimpleName("CommandMissing")
        .should()
        .beAssignableTo(RefusedException.class)
        .check(ALL);
  }

  /** Whoever catches a misuse of code hides a fault of the program. */
  @Test
  void misusesOfCodeAreNotCaught() {
    // each of these hands on or reports what it catches, or asks the JDK alone
    Set<String> allowed = Set.of("Workers", "LocalServer", "PageJobs", "Fonts", "Query");
    Set<String> misuses =
        Set.of(IllegalArgumentException.class.getName(), RuntimeException.class.getName());
    List<String> caught =
        ALL.stream()
            .filter(c -> !allowed.contains(c.getSimpleName()))
            .flatMap(c -> c.getCodeUnits().stream())
            .flatMap(unit -> unit.getTryCatchBlocks().stream())
            .filter(
                b -> b.getCaughtThrowables().stream().anyMatch(t -> misuses.contains(t.getName())))
            .map(b -> b.getOwner().getFullName())
            .toList();
    assertThat(caught).isEmpty();
  }
}
