package broodtide;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.Architectures;

/** The order of the model's rooms: each uses only those before it. */
@AnalyzeClasses(packages = "broodtide", importOptions = ImportOption.DoNotIncludeTests.class)
class ModelArchitectureTest {
  @ArchTest
  static final ArchRule ORDER =
      Architectures.layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .layer("measure")
          .definedBy("broodtide.measure")
          .layer("season")
          .definedBy("broodtide.season")
          .layer("colony")
          .definedBy("broodtide.colony")
          .layer("mite")
          .definedBy("broodtide.mite")
          .layer("control")
          .definedBy("broodtide.control")
          .layer("engine")
          .definedBy("broodtide.engine")
          .layer("flow")
          .definedBy("broodtide.flow")
          .optionalLayer("wash")
          .definedBy("broodtide.wash")
          .optionalLayer("fit")
          .definedBy("broodtide.fit")
          .whereLayer("fit")
          .mayNotBeAccessedByAnyLayer()
          .whereLayer("flow")
          .mayNotBeAccessedByAnyLayer()
          .whereLayer("wash")
          .mayOnlyBeAccessedByLayers("fit")
          .whereLayer("engine")
          .mayOnlyBeAccessedByLayers("flow", "wash", "fit")
          .whereLayer("control")
          .mayOnlyBeAccessedByLayers("engine", "flow", "wash", "fit")
          .whereLayer("mite")
          .mayOnlyBeAccessedByLayers("control", "engine", "flow", "wash", "fit")
          .whereLayer("colony")
          .mayOnlyBeAccessedByLayers("mite", "control", "engine", "flow", "wash", "fit")
          .whereLayer("season")
          .mayOnlyBeAccessedByLayers("colony", "mite", "control", "engine", "flow", "wash", "fit");

  @ArchTest
  static final ArchRule NO_CYCLES = slices().matching("broodtide.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule MATHS_ALONE =
      classes()
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(
              "broodtide..",
              "java.lang..",
              "java.util..",
              "java.time..",
              "org.apache.commons.math3..",
              "org.jspecify..");

  @ArchTest
  static final ArchRule NO_OUTSIDE =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("com.fasterxml..", "picocli..", "java.awt..", "javax.swing..");
}
