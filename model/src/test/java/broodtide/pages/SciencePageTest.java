package broodtide.pages;

import broodtide.colony.BeeRates;
import broodtide.colony.BroodTimes;
import broodtide.control.Miticide;
import broodtide.engine.LittlesLawTest;
import broodtide.engine.PublishedColonyTest;
import broodtide.engine.RenewalCheckTest;
import broodtide.fit.Priors;
import broodtide.mite.MiteRates;
import broodtide.mite.StockTraits;
import broodtide.season.Climate;
import broodtide.wash.Factor;
import broodtide.wash.Frame;
import broodtide.wash.HalfCup;
import broodtide.wash.IntervalTest;
import broodtide.wash.SamplePlan;
import broodtide.wash.SamplePlanTest;
import broodtide.wash.WashMethod;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The parts of the science page that the model alone can write. */
@Tag("pages")
class SciencePageTest {
  private static final Path PAGE = Path.of("SCIENCE.md");

  /** A miticide of which no more is known than is usual. */
  private static final Miticide USUAL =
      new Miticide("usual", 1, 1, 0, 0, 0, 0, 40, Miticide.SupersRule.OFF);

  @Test
  void broodTimes() {
    MarkdownTable table = new MarkdownTable("brood", "egg:", "larva:", "capped:", "in all, days:");
    brood(table, "worker", BroodTimes.WORKER);
    brood(table, "drone", BroodTimes.DRONE);
    part("brood times", table.toString());
  }

  private static void brood(MarkdownTable table, String name, BroodTimes t) {
    table.row(name, "" + t.egg(), "" + t.larva(), "" + t.capped(), "" + t.total());
  }

  @Test
  void parameters() {
    part(
        "parameters",
        ParameterTable.of(
            List.of(
                BeeRates.class,
                MiteRates.class,
                Climate.class,
                StockTraits.class,
                HalfCup.class,
                SamplePlan.class)));
  }

  @Test
  void washFactors() {
    MarkdownTable table =
        new MarkdownTable("wash", "mean:", "sd:", "standing of the mean", "source");
    for (WashMethod method : WashMethod.values()) {
      factor(table, "found by `" + method.id() + "`", method.recovery());
    }
    for (Frame frame : Frame.values()) {
      factor(table, "on a frame `" + frame.id() + "`", frame.factor());
    }
    part("wash factors", table.toString());
  }

  private static void factor(MarkdownTable table, String what, Factor f) {
    table.row(
        what,
        Figures.of(f.mean(), 3),
        Figures.of(f.sd(), 3),
        f.tag().name().toLowerCase(Locale.ROOT),
        f.source());
  }

  @Test
  void priors() {
    Priors p = Priors.defaults();
    part("priors", ParameterTable.ofPriors(p.unknowns(List.of(USUAL))));
  }

  @Test
  void checksOfTheEquations() {
    checks(
        "checks of the equations",
        PublishedColonyTest.checks(),
        LittlesLawTest.checks(),
        RenewalCheckTest.checks());
  }

  @Test
  void checksOfTheStatistics() {
    checks("checks of the statistics", IntervalTest.checksForThePage(), SamplePlanTest.checks());
  }

  @SafeVarargs
  private static void checks(String name, Stream<Check>... checks) {
    part(name, Check.table(Stream.of(checks).flatMap(c -> c).toList()));
  }

  private static void part(String name, String text) {
    new WrittenPart(PAGE, name).holds(text);
  }
}
