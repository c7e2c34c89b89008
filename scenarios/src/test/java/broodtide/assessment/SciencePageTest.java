package broodtide.assessment;

import broodtide.assessment.EfficacyFit.Setting;
import broodtide.catalog.Assumptions;
import broodtide.catalog.ControlTemplate.Efficacy;
import broodtide.control.MiticideCourse;
import broodtide.engine.Wintering;
import broodtide.pages.Check;
import broodtide.pages.Figures;
import broodtide.pages.MarkdownTable;
import broodtide.pages.ParameterTable;
import broodtide.pages.WrittenPart;
import broodtide.study.ColonyStart;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The parts of the science page that need the shipped climates and controls. */
@Tag("pages")
class SciencePageTest {
  private static final Path PAGE = Path.of("../model/SCIENCE.md");

  @Test
  void parametersOfDecisions() {
    new WrittenPart(PAGE, "parameters of studies and decisions")
        .holds(ParameterTable.of(List.of(Wintering.class, Assumptions.class, ColonyStart.class)));
  }

  @Test
  void growth() {
    part(
        "checks of growth",
        YearlyGrowthTest.checks(),
        SeasonsInFloridaTest.checks(),
        SplitsInAlabamaTest.checks(),
        FactsOfTheTradeTest.checks(),
        LowGrowthStockTest.checks());
  }

  @Test
  void coloniesAndPlaces() {
    part(
        "checks of colonies",
        ColonySizeTest.checks(),
        WinterBeesTest.checks(),
        MitesOnAdultsTest.checks(),
        HighestInfestationTest.checks());
  }

  @Test
  void controls() {
    part(
        "checks of controls",
        DroneCombTrialsTest.checks(),
        OxalicWithBroodTest.checks(),
        CagingWithOxalicTest.checks(),
        TreatmentOrderTest.checks(),
        WarmthOfTrialsTest.checks());
  }

  @Test
  void winter() {
    part(
        "checks of winter",
        TimeOfTreatmentTest.checks(),
        WinterLossesTest.checks(),
        SurvivalInGeorgiaTest.checks(),
        LateLossesTest.checks());
  }

  @Test
  void lateSeasonSideBySide() {
    new WrittenPart(PAGE, "late season side by side").holds(LateSeasonTable.text());
  }

  @Test
  void treatmentMonths() {
    new WrittenPart(PAGE, "month of treatment").holds(TreatmentMonthTable.text());
  }

  @Test
  void untreatedColonies() {
    new WrittenPart(PAGE, "untreated colonies").holds(HighestInfestationTest.table());
  }

  @Test
  void efficaciesThatHazardsAreFittedTo() {
    MarkdownTable table =
        new MarkdownTable(
            "control",
            "model:",
            "published",
            "on bees, 1/day:",
            "in cells, 1/day:",
            "setting",
            "source");
    for (String name : Shipped.controls(MiticideCourse.class)) {
      Efficacy stated = Shipped.efficacy(name);
      Setting setting = Shipped.setting(name);
      var substance = Shipped.substance(name);
      table.row(
          "`" + name + "`",
          Figures.of(EfficacyFit.efficacy(Shipped.course(name, setting.start()), setting), 3),
          Figures.of(stated.share(), 3),
          Figures.of(substance.onBees(), 3),
          Figures.of(substance.inCells(), 3),
          words(setting),
          stated.source());
    }
    new WrittenPart(PAGE, "fitted controls").holds(table.toString());
  }

  private static String words(Setting s) {
    return s.model().climate().name()
        + ", "
        + String.format(
            Locale.ROOT, "%02d-%02d", s.start().getMonthValue(), s.start().getDayOfMonth())
        + (s.broodless() ? ", no brood" : ", with brood")
        + ", after "
        + s.measuredAfter()
        + " days against "
        + switch (s.against()) {
          case UNTREATED -> "untreated colonies";
          case START -> "the start";
          case FOLLOWUP -> "a follow-up";
        };
  }

  @SafeVarargs
  private static void part(String name, Stream<Check>... checks) {
    new WrittenPart(PAGE, name).holds(Check.table(Stream.of(checks).flatMap(c -> c).toList()));
  }
}
