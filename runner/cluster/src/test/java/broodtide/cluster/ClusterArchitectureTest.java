package broodtide.cluster;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClass.Predicates;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The job stands outside of the program: it uses the core, and nothing uses it or its engine. */
@Tag("cluster")
class ClusterArchitectureTest {
  private static final JavaClasses ALL =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("broodtide");

  @Test
  void theJobUsesTheCoreAndNoPartOfTheProgramThatTalksToPeople() {
    noClasses()
        .that()
        .resideInAPackage("broodtide.cluster..")
        .should()
        .dependOnClassesThat(
            Predicates.resideInAPackage("broodtide..")
                .and(
                    Predicates.resideOutsideOfPackages(
                        "broodtide.cluster..",
                        // the model
                        "broodtide.measure..",
                        "broodtide.season..",
                        "broodtide.control..",
                        "broodtide.engine..",
                        "broodtide.wash..",
                        "broodtide.fit..",
                        // what is read, worked out and written
                        "broodtide.forms..",
                        "broodtide.table..",
                        "broodtide.catalog..",
                        "broodtide.study..",
                        "broodtide.assessment..",
                        "broodtide.decision..",
                        "broodtide.results..",
                        "broodtide.files..")))
        .check(ALL);
  }

  @Test
  void nothingUsesTheJob() {
    noClasses()
        .that()
        .resideOutsideOfPackage("broodtide.cluster..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("broodtide.cluster..", "org.apache.spark..", "org.apache.hadoop..")
        .check(ALL);
  }

  @Test
  void onlyTheEntryIsPublic() {
    classes()
        .that()
        .resideInAPackage("broodtide.cluster..")
        .and()
        .arePublic()
        .should()
        .haveSimpleName("ClusterMain")
        .check(ALL);
  }
}
