package broodtide.assessment;

import broodtide.assessment.EfficacyFit.Setting;
import broodtide.catalog.Assumptions;
import broodtide.catalog.ControlTemplate.Efficacy;
import broodtide.catalog.EfficacyTrial;
import broodtide.control.Miticide;
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
            "trials:",
            "pooled:",
            "two thirds of colonies",
            "model, middle:",
            "model, two thirds",
            "on bees, 1/day:",
            "in cells, 1/day:",
            "spread between trials, in them",
            "setting");
    for (String name : Shipped.controls(MiticideCourse.class)) {
      Efficacy stated = Shipped.efficacy(name);
      Setting setting = Shipped.setting(name);
      Miticide substance = Shipped.substance(name);
      double total = substance.spread().total();
      table.row(
          "`" + name + "`",
          Long.toString(stated.trials().stream().filter(EfficacyTrial::pooled).count()),
          Figures.of(stated.share(), 3),
          Figures.of(stated.share(-1), 3) + " to " + Figures.of(stated.share(1), 3),
          shown(name, setting, 1),
          shown(name, setting, Math.exp(-total)) + " to " + shown(name, setting, Math.exp(total)),
          Figures.of(substance.onBees(), 3),
          Figures.of(substance.inCells(), 3),
          Figures.of(substance.spread().trials(), 3)
              + ", "
              + Figures.of(substance.spread().colonies(), 3),
          words(setting));
    }
    new WrittenPart(PAGE, "fitted controls").holds(table.toString());
  }

  /** What a course shows in its setting when its hazards are multiplied. */
  private static String shown(String name, Setting setting, double factor) {
    MiticideCourse c = Shipped.course(name, setting.start());
    MiticideCourse stronger =
        new MiticideCourse(
            c.name(), c.substance().scaled(factor), c.start(), c.applications(), c.every());
    return Figures.of(EfficacyFit.efficacy(stronger, setting), 3);
  }

  @Test
  void trials() {
    MarkdownTable table =
        new MarkdownTable(
            "control",
            "published:",
            "untreated:",
            "corrected:",
            "colonies:",
            "high:",
            "counts",
            "source");
    for (String name : Shipped.controls(MiticideCourse.class)) {
      for (EfficacyTrial trial : Shipped.efficacy(name).trials()) {
        table.row(
            "`" + name + "`",
            Figures.of(trial.share(), 3),
            trial.untreated().map(u -> Figures.of(u, 3)).orElse(""),
            Figures.of(trial.corrected(), 3),
            trial.colonies().map(String::valueOf).orElse(""),
            trial.high().map(h -> Figures.of(h, 3)).orElse(""),
            trial.pooled() ? "yes" : "check",
            trial.source());
      }
    }
    new WrittenPart(PAGE, "trials of treatments").holds(table.toString());
  }

  @Test
  void forestPlot() {
    StringBuilder plot = new StringBuilder("```\n");
    plot.append(line("", "0 %       20        40        60        80       100 %", ""));
    for (String name : Shipped.controls(MiticideCourse.class)) {
      Efficacy stated = Shipped.efficacy(name);
      if (stated.pooled().isEmpty()) {
        continue;
      }
      for (EfficacyTrial t : stated.trials()) {
        plot.append(
            line(
                "",
                marks(t.corrected(), t.corrected(), t.corrected(), t.pooled() ? 'o' : 'x'),
                t.source().replaceFirst("[,:;].*", "")));
      }
      plot.append(
          line(name, marks(stated.share(-1), stated.share(), stated.share(1), '#'), "pooled"));
    }
    plot.append("```\n");
    new WrittenPart(PAGE, "forest plot").holds(plot.toString());
  }

  private static String line(String name, String marks, String what) {
    return String.format(Locale.ROOT, "%-20s %-51s  %s", name, marks, what).stripTrailing() + "\n";
  }

  /** A range with its middle over 51 places, 0 to 100 %. */
  private static String marks(double low, double middle, double high, char mark) {
    StringBuilder s = new StringBuilder();
    int from = (int) Math.round(50 * low);
    int to = (int) Math.round(50 * high);
    int at = (int) Math.round(50 * middle);
    for (int i = 0; i <= to; i++) {
      s.append(i == at ? mark : i >= from ? '-' : ' ');
    }
    return s.toString();
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
