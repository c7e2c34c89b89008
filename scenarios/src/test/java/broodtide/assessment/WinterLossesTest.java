package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Assumptions;
import broodtide.catalog.Catalog;
import broodtide.catalog.Surroundings;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.SpringLow;
import broodtide.engine.Survival;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.fit.SeasonPosterior;
import broodtide.pages.Check;
import broodtide.wash.Interval;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Survival over winter by the wash of late September: 83, 67, 55, 38 and 0 % of colonies with less
 * than 1, 1 to 3, 3 to 6, 6 to 12 and 12 or more mites per 100 bees (yards in Vermont, 2021, from
 * memory, 5 to 22 colonies a band). The infection of adults and {@link Survival} were calibrated to
 * this shape, so this checks the calibration; it is not independent of it.
 *
 * <p>How many colonies each band had is not stated; taken is the largest count up to 22 that gives
 * the percentage, which makes the narrowest interval, and 5 for the last band, since no other
 * percentage can come from 5. Some of the colonies were treated after the wash: half of them by
 * choice, with oxalic acid in November when there is no brood. Colonies differ in strength, size
 * and vigour of their mites as {@link Priors} say; nothing flies in.
 */
@Tag("outside")
class WinterLossesTest {
  /** Least count in 300 bees of each band. */
  private static final int[] BANDS = {0, 3, 9, 18, 36};

  private static final int[] PUBLISHED = {83, 67, 55, 38, 0};
  private static final int[] SURVIVED = {15, 14, 12, 8, 0};
  private static final int[] COLONIES = {18, 21, 22, 21, 5};

  private static final LocalDate MAY = LocalDate.of(2021, 5, 1);
  private static final LocalDate WASH = LocalDate.of(2021, 9, 25);
  private static final LocalDate TREATED = LocalDate.of(2021, 11, 15);
  private static final int MEMBERS = 4000;

  static Stream<Check> checks() {
    return Stream.of(
            IntStream.range(0, BANDS.length).mapToObj(WinterLossesTest::survival),
            Stream.of(oneWash(1, 0.10, 0.25), oneWash(8, 0.15, 0.50)))
        .flatMap(c -> c);
  }

  private static Check survival(int b) {
    Interval survey = Interval.binomial(SURVIVED[b], COLONIES[b], 0.95);
    String band =
        b == 0 ? "under 1" : b == 4 ? "12 or more" : BANDS[b] / 3 + " to " + BANDS[b + 1] / 3;
    Check check =
        Check.within(
            "share alive in spring, late-September wash of " + band + " per 100, cold-continental",
            PUBLISHED[b] + " %; exact 95 % interval of so few colonies",
            survey.low(),
            survey.high(),
            "from memory, no author known: yards in Vermont, 2021; infection of adults"
                + " was fitted to it",
            () -> model()[b]);
    return b == 3
        ? check.missedBecause(
            "yards with the same washes differed widely; survival of heavily infested colonies in"
                + " cold places is overstated")
        : check;
  }

  @ParameterizedTest
  @MethodSource("checks")
  void published(Check check) {
    check.verify();
  }

  private static double[] model() {
    return Winter.SURVIVAL.clone();
  }

  /** Played once, when first asked for. */
  private static final class Winter {
    static final double[] SURVIVAL = survivalByBand();
  }

  private static double[] survivalByBand() {
    ColonyModel vermont = Shipped.model("cold-continental");
    LocalDate low = SpringLow.after(vermont, WASH).day();
    DrawnColonies colonies = new DrawnColonies(vermont, MAY, MEMBERS, 0.2, 1.1);
    EnsembleRun untreated = colonies.under(Plan.waiting("untreated"), low);
    EnsembleRun treated =
        colonies.under(
            new Plan("treated", List.of(Shipped.course("oxalic-dribble", TREATED))), low);
    double[] share = new double[BANDS.length];
    for (int b = 0; b < BANDS.length; b++) {
      double[] weights = DrawnColonies.counted(untreated, WASH, BANDS[b], next(b));
      share[b] =
          (colonies.shareAlive(untreated, weights, WASH, low)
                  + colonies.shareAlive(treated, weights, WASH, low))
              / 2;
    }
    return share;
  }

  /** Bands are of mites per 100 bees, counts of mites in 300. */
  private static int next(int band) {
    return band == BANDS.length - 1 ? 301 : BANDS[band + 1];
  }

  /** More mites in late September, fewer colonies in spring; each band below the one before. */
  @Test
  void survivalFallsFromBandToBand() {
    double[] model = model();
    for (int b = 1; b < BANDS.length; b++) {
      assertThat(model[b]).isLessThan(model[b - 1]);
    }
  }

  /** One wash on 5 September 2025 and nothing done. */
  private static Check oneWash(int mites, double low, double high) {
    return Check.within(
        "winter loss after one wash of " + mites + " in 300 on 5 September, cold-continental",
        "published losses at such washes; "
            + (int) (100 * low)
            + " to "
            + (int) (100 * high)
            + " %",
        low,
        high,
        "27 % in Ontario, Guzman-Novoa et al. 2010; 11 to 18 % in national surveys, from"
            + " memory; range by choice",
        () -> lossAfter(mites));
  }

  private static double lossAfter(int mites) {
    LocalDate wash = LocalDate.of(2025, 9, 5);
    ColonyCase c =
        new ColonyCase(
            "A",
            Shipped.model("cold-continental")
                .with(Surroundings.SPARSE.immigration(Assumptions.usual())),
            wash,
            wash.plusDays(1),
            LocalDate.of(2026, 5, 31),
            List.of(Wash.of(wash, "A", mites, 300)),
            List.of(),
            Catalog.threshold("kulhanek-2021"),
            Priors.defaults());
    Plan wait = Plan.waiting("wait");
    try (Workers workers = new Workers(2)) {
      EnsembleRun run =
          c.posterior(new SeasonPosterior.SamplerSettings(1024, 3, 1), workers, Progress.NONE)
              .run(c.season(wait), PlanRun.watched(c), workers, Progress.NONE);
      PlanRun played = new PlanRun(c, wait, run, List.of());
      return played.shareLost(played.springLow().orElseThrow().day());
    }
  }
}
