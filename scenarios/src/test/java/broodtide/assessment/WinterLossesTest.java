package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Assumptions;
import broodtide.catalog.Surroundings;
import broodtide.catalog.ThresholdLibrary;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.SpringLow;
import broodtide.engine.StandardColony;
import broodtide.engine.Survival;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.fit.SeasonPosterior;
import broodtide.fit.Unknown;
import broodtide.pages.Check;
import broodtide.wash.Interval;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Survival over winter by the wash of late September: 83, 67, 55, 38 and 0 % of colonies with less
 * than 1, 1 to 3, 3 to 6, 6 to 12 and 12 or more mites per 100 bees (survey of Vermont, 2021, 5 to
 * 22 colonies a band). The infection of adults and {@link Survival} were calibrated to this shape,
 * so this checks the calibration; it is not independent of it.
 *
 * <p>How many colonies each band had is not stated; taken is the largest count up to 22 that gives
 * the percentage, which makes the narrowest interval, and 5 for the last band, since no other
 * percentage can come from 5. Some of the colonies were treated after the wash: half of them by
 * choice, with oxalic acid in November when there is no brood. Colonies differ in strength, size
 * and vigour of their mites as {@link Priors} say; nothing flies in.
 */
@Tag("outside")
class WinterLossesTest {
  private static final double[] BANDS = {1, 3, 6, 12, Double.POSITIVE_INFINITY};
  private static final int[] PUBLISHED = {83, 67, 55, 38, 0};
  private static final int[] SURVIVED = {15, 14, 12, 8, 0};
  private static final int[] COLONIES = {18, 21, 22, 21, 5};

  private static final LocalDate MAY = LocalDate.of(2021, 5, 1);
  private static final LocalDate WASH = LocalDate.of(2021, 9, 25);
  private static final LocalDate TREATED = LocalDate.of(2021, 11, 15);
  private static final int MEMBERS = 2000;
  private static final double BEES_TIMES_RECOVERY = 300 * 0.9;

  static Stream<Check> checks() {
    return Stream.of(
            IntStream.range(0, BANDS.length).mapToObj(WinterLossesTest::survival),
            Georgia.all(),
            Stream.of(oneWash(1, 0.10, 0.25), oneWash(8, 0.15, 0.50)))
        .flatMap(c -> c);
  }

  private static Check survival(int b) {
    Interval survey = Interval.binomial(SURVIVED[b], COLONIES[b], 0.95);
    String band =
        b == 0 ? "under 1" : b == 4 ? "12 or more" : (int) BANDS[b - 1] + " to " + (int) BANDS[b];
    Check check =
        Check.within(
            "share alive in spring, late-September wash of " + band + " per 100, cold-continental",
            PUBLISHED[b] + " %; exact 95 % interval of so few colonies",
            survey.low(),
            survey.high(),
            "survey of Vermont, 2021; infection of adults was fitted to it among others",
            () -> model()[b]);
    return b == 2 || b == 3
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
    SpringLow low = SpringLow.after(vermont, WASH);
    RandomGenerator chance = new Well19937c(20210925);
    List<SimulatedColony> members = members(chance, 0.2, 1.1);
    Plan none = Plan.waiting("untreated");
    Plan oxalic = new Plan("treated", List.of(Shipped.course("oxalic-dribble", TREATED)));
    EnsembleRun untreated = run(vermont, none, low.day(), MAY, members);
    Survival survival = Survival.in(vermont);
    double[] aliveUntreated = alive(survival, untreated, WASH, low.day());
    double[] aliveTreated =
        alive(survival, run(vermont, oxalic, low.day(), MAY, members), WASH, low.day());
    double[] aliveThen = alive(survival, untreated, WASH, WASH);
    double[] infestation = untreated.values(Quantity.INFESTATION, WASH);
    double[] share = new double[BANDS.length];
    double[] standing = new double[BANDS.length];
    int[] count = new int[BANDS.length];
    for (int i = 0; i < MEMBERS; i++) {
      double expected = Math.min(BEES_TIMES_RECOVERY, infestation[i] / 100 * BEES_TIMES_RECOVERY);
      int mites = new PoissonDistribution(chance, expected, 1e-12, 10_000).sample();
      int band = band(mites / 3.0);
      count[band]++;
      standing[band] += aliveThen[i];
      share[band] += (aliveUntreated[i] + aliveTreated[i]) / 2;
    }
    for (int b = 0; b < BANDS.length; b++) {
      assertThat(count[b]).as("colonies in band %d", b).isGreaterThan(100);
      share[b] /= standing[b];
    }
    return share;
  }

  /** Chances of being alive, not yet divided by those of the day of the wash. */
  private static double[] alive(Survival survival, EnsembleRun run, LocalDate wash, LocalDate day) {
    double[] out = run.least(Quantity.ADULTS, wash, day);
    Arrays.setAll(out, m -> survival.enough(out[m]) * survival.spared(wash, day));
    return out;
  }

  /** More mites in late September, fewer colonies in spring; each band below the one before. */
  @Test
  void survivalFallsFromBandToBand() {
    double[] model = model();
    for (int b = 1; b < BANDS.length; b++) {
      assertThat(model[b]).isLessThan(model[b - 1]);
    }
  }

  private static List<SimulatedColony> members(
      RandomGenerator chance, double median, double logSd) {
    Priors priors = Priors.defaults();
    List<SimulatedColony> members = new ArrayList<>();
    for (int i = 0; i < MEMBERS; i++) {
      double strength = priors.of(Unknown.LAYING_FACTOR).at(chance.nextGaussian());
      double size = strength * priors.of(Unknown.START_SIZE).at(chance.nextGaussian());
      double vigour = priors.of(Unknown.REPRODUCTION_FACTOR).at(chance.nextGaussian());
      double infectivity = priors.of(Unknown.INFECTIVITY).at(chance.nextGaussian());
      double infestation = median * Math.exp(logSd * chance.nextGaussian());
      members.add(
          new SimulatedColony(
              strength, Math.min(5, size), infestation, vigour, 1, infectivity, List.of()));
    }
    return members;
  }

  private static EnsembleRun run(
      ColonyModel model,
      Plan plan,
      LocalDate until,
      LocalDate start,
      List<SimulatedColony> members) {
    try (Workers workers = new Workers(2)) {
      return EnsembleRun.of(
          Scenario.until(model, plan, start, until),
          StandardColony.on(model, start),
          members,
          EnumSet.of(Quantity.ADULTS, Quantity.INFESTATION),
          workers,
          Progress.NONE);
    }
  }

  private static int band(double perHundred) {
    int band = 0;
    while (perHundred >= BANDS[band]) {
      band++;
    }
    return band;
  }

  /** Untreated colonies in Georgia: a wash in October, alive five months later. */
  private static final class Georgia {
    static final int[] COUNTS = {9, 15, 30, 61, Integer.MAX_VALUE};
    static final int[] COLONIES = {16, 21, 27, 25, 15};
    static final int[] ALIVE = {14, 16, 15, 5, 1};
    static final String[] BINS = {"under 9", "9 to 14", "15 to 29", "30 to 60", "over 60"};
    static final String SOURCE = "Bartlett et al. 2024, J. Insect Sci.; the model was fitted to it";

    /** Mites per 100 bees at the wash; spread so that the bins fill as they did there. */
    static final double MEDIAN = 7.4;

    static final double LOG_SD = 0.9;

    static final String SLOW =
        "colonies with 30 to 60 mites in 300 in October die too slowly; how the hives of the"
            + " trial differed besides their washes is not known";
    static final double[] MODEL = model();

    private static double[] model() {
      ColonyModel place =
          Shipped.model("warm-temperate")
              .with(Surroundings.SPARSE.immigration(Assumptions.usual()));
      LocalDate wash = LocalDate.of(2021, 10, 15);
      LocalDate spring = wash.plusMonths(5);
      RandomGenerator chance = new Well19937c(20211015);
      List<SimulatedColony> members = members(chance, MEDIAN, LOG_SD);
      EnsembleRun run = run(place, Plan.waiting("untreated"), spring, wash, members);
      double[] infestation = run.values(Quantity.INFESTATION, wash);
      double[] then = alive(Survival.in(place), run, wash, wash);
      double[] later = alive(Survival.in(place), run, wash, spring);
      double[] share = new double[COUNTS.length];
      double[] standing = new double[COUNTS.length];
      for (int i = 0; i < MEMBERS; i++) {
        double expected = Math.min(BEES_TIMES_RECOVERY, infestation[i] / 100 * BEES_TIMES_RECOVERY);
        int mites = new PoissonDistribution(chance, expected, 1e-12, 10_000).sample();
        int bin = 0;
        while (mites >= COUNTS[bin]) {
          bin++;
        }
        share[bin] += later[i];
        standing[bin] += then[i];
      }
      for (int b = 0; b < share.length; b++) {
        share[b] /= standing[b];
      }
      return share;
    }

    static double total() {
      return IntStream.range(0, COLONIES.length).mapToDouble(b -> COLONIES[b] * MODEL[b]).sum();
    }

    static double brier() {
      double sum = 0;
      for (int b = 0; b < COLONIES.length; b++) {
        double p = MODEL[b];
        sum += ALIVE[b] * (1 - p) * (1 - p) + (COLONIES[b] - ALIVE[b]) * p * p;
      }
      return sum / Arrays.stream(COLONIES).sum();
    }

    static Check bin(int b) {
      Interval exact = Interval.binomial(ALIVE[b], COLONIES[b], 0.95);
      Check check =
          Check.within(
              "share alive in March, October wash of " + BINS[b] + " in 300, warm-temperate",
              ALIVE[b] + " of " + COLONIES[b] + "; exact 95 % interval",
              exact.low(),
              exact.high(),
              SOURCE,
              () -> MODEL[b]);
      return b == 3 ? check.missedBecause(SLOW) : check;
    }

    static Stream<Check> all() {
      return Stream.concat(
          IntStream.range(0, COLONIES.length).mapToObj(Georgia::bin),
          Stream.of(
              Check.within(
                      "colonies of 104 alive in March, warm-temperate",
                      "51; held to 46 to 60",
                      46,
                      60,
                      SOURCE,
                      Georgia::total)
                  .missedBecause(SLOW),
              Check.within(
                      "Brier score of these 104, warm-temperate",
                      "0.250 for one chance for all; at most 0.170",
                      0,
                      0.170,
                      SOURCE,
                      Georgia::brier)
                  .missedBecause(SLOW)));
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
        "Ontario 27 %, Guzman-Novoa 2010; Austria 11 %, Germany 13 to 18 %; range by choice",
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
            ThresholdLibrary.shipped("kulhanek-2021"),
            Priors.defaults());
    Plan wait = Plan.waiting("wait");
    try (Workers workers = new Workers(2)) {
      EnsembleRun run =
          c.posterior(new SeasonPosterior.SamplerSettings(1024, 3, 1), workers, Progress.NONE)
              .run(c.season(wait), PlanRun.KEPT, workers, Progress.NONE);
      PlanRun played = new PlanRun(c, wait, run, List.of());
      return played.shareLost(played.springLow().orElseThrow().day());
    }
  }
}
