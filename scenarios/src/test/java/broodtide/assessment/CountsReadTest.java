package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.catalog.Catalog;
import broodtide.engine.ColonyModel;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.StandardColony;
import broodtide.engine.Workers;
import broodtide.fit.FirstOrderIndex;
import broodtide.fit.PriorSensitivity;
import broodtide.fit.SeasonPosterior;
import broodtide.fit.SeasonPosterior.SamplerSettings;
import broodtide.fit.UnknownSummary;
import broodtide.season.Climate;
import broodtide.wash.BoardCount;
import broodtide.wash.Frame;
import broodtide.wash.Infestation;
import broodtide.wash.Interval;
import broodtide.wash.Stage;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import broodtide.wash.WashMethod;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.junit.jupiter.api.Test;

/** Counts of one day read in their season, and what follows from one count or one climate. */
class CountsReadTest {
  private static final Climate TEMPERATE = Catalog.climate("temperate");
  private static final ThresholdSet THREE = ThresholdSet.given("3", 3, 100);
  private static final LocalDate DAY = LocalDate.of(2025, 8, 2);

  private static CountSheet sheet(ThresholdSet set, Wash... washes) {
    return CountSheet.of(List.of(washes), TEMPERATE, set);
  }

  @Test
  void aCountIsReadInItsSeason() {
    Wash wash = Wash.of(DAY, "A", 9, 300);
    CountReading read = CountReading.of(wash, TEMPERATE, THREE);
    StandardColony usual = StandardColony.on(ColonyModel.in(TEMPERATE), DAY);
    assertThat(read.wash()).isSameAs(wash);
    assertThat(read.stage()).isEqualTo(Stage.AFTER_HARVEST);
    assertThat(read.thresholds()).isEqualTo(THREE);
    assertThat(read.threshold()).hasValue(3);
    assertThat(read.adults()).isEqualTo(usual.adults());
    assertThat(read.mitesPerMiteOnBees()).isEqualTo(usual.mitesPerMiteOnBees()).isGreaterThan(1);
    // Clopper and Pearson 1934 by the beta distribution
    Interval exact = read.exact();
    assertThat(exact.low())
        .isCloseTo(
            100 * new BetaDistribution(null, 9, 292).inverseCumulativeProbability(0.05),
            within(1e-6));
    assertThat(exact.high())
        .isCloseTo(
            100 * new BetaDistribution(null, 10, 291).inverseCumulativeProbability(0.95),
            within(1e-6));
    Infestation infestation = Infestation.of(wash);
    assertThat(read.asCounted().median()).isEqualTo(infestation.asCounted().median());
    assertThat(read.inColony().median())
        .isEqualTo(infestation.inColony().median())
        .isGreaterThan(read.asCounted().median());
    assertThat(read.chanceAbove()).isEqualTo(infestation.asAlcoholWash().chanceAbove(3));
    double factor = usual.adults() / 100 * usual.mitesPerMiteOnBees();
    assertThat(read.mitesInAll().median())
        .isCloseTo(factor * read.inColony().median(), within(1e-6));
    Interval all = read.mitesInAll().interval(0.5);
    Interval perHundred = read.inColony().interval(0.5);
    assertThat(all.low()).isCloseTo(factor * perHundred.low(), within(1e-6));
    assertThat(all.high()).isCloseTo(factor * perHundred.high(), within(1e-6));
    ThresholdSet dated = Catalog.threshold("strange-sheppard-2001");
    CountReading none =
        CountReading.of(Wash.of(LocalDate.of(2025, 7, 2), "A", 9, 300), TEMPERATE, dated);
    assertThat(none.threshold()).isEmpty();
    assertThatThrownBy(none::chanceAbove).isInstanceOf(NoSuchElementException.class);
  }

  /** The likelier over the threshold first; of as likely ones the more mites, then by name. */
  @Test
  void rowsGoByUrgency() {
    Wash few = Wash.of(DAY, "few", 4, 300);
    Wash many = Wash.of(DAY, "many", 20, 300);
    Wash b = Wash.of(DAY, "b", 4, 300);
    CountSheet sheet = sheet(THREE, few, many, b);
    assertThat(sheet.rows().stream().map(r -> r.wash().colony()))
        .containsExactly("many", "b", "few");
    assertThat(sheet.date()).isEqualTo(DAY);
    assertThat(sheet.threshold()).hasValue(3);
    assertThat(sheet.thresholds()).isEqualTo(THREE);
    assertThat(sheet.hives()).isEqualTo(3);
    double expected = sheet.rows().stream().mapToDouble(CountReading::chanceAbove).sum();
    assertThat(sheet.expectedOver().orElseThrow()).isCloseTo(expected, within(1e-12));
    ApiaryCount over = sheet.over().orElseThrow();
    assertThat(over.mean()).isCloseTo(expected, within(1e-12));
    double[] distribution = over.distribution();
    double mean = 0;
    for (int k = 0; k < 4; k++) {
      mean += k * distribution[k];
    }
    assertThat(mean).isCloseTo(expected, within(1e-6));
    // small samples of as many mites per bee are less sure
    Wash sure = Wash.of(DAY, "b sure", 40, 1000);
    Wash unsure = Wash.of(DAY, "a unsure", 4, 100);
    assertThat(sheet(THREE, unsure, sure).rows().stream().map(r -> r.wash().colony()))
        .containsExactly("b sure", "a unsure");
    assertThatThrownBy(() -> new CountSheet(List.of()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a sheet has no counts; give it at least one");
  }

  @Test
  void withoutAThresholdTheMoreMitesComeFirst() {
    ThresholdSet dated = Catalog.threshold("strange-sheppard-2001");
    LocalDate july = LocalDate.of(2025, 7, 2);
    CountSheet sheet =
        sheet(
            dated,
            Wash.of(july, "few", 4, 300),
            Wash.of(july, "many", 20, 300),
            Wash.of(july, "many", 5, 300));
    assertThat(sheet.rows().stream().map(r -> r.wash().mites())).containsExactly(20, 5, 4);
    assertThat(sheet.threshold()).isEmpty();
    assertThat(sheet.expectedOver()).isEmpty();
    assertThat(sheet.over()).isEmpty();
    assertThat(sheet.hives()).isEqualTo(2);
    assertThat(sheet.countedOften()).containsExactly("many");
  }

  /** Half a cup by a method in doubt: what hives have in common makes both or none likelier. */
  @Test
  void countsOfOneHandShareTheirDoubt() {
    CountSheet sheet = sheet(THREE, sugar("A", 7), sugar("B", 7));
    double chance = sheet.rows().get(0).chanceAbove();
    double[] both = sheet.over().orElseThrow().distribution();
    assertThat(both[2]).isGreaterThan(chance * chance + 0.01);
    assertThat(both[0]).isGreaterThan((1 - chance) * (1 - chance) + 0.01);
    assertThat(both[1] + 2 * both[2]).isCloseTo(2 * chance, within(1e-6));
    CountSheet apart = sheet(THREE, sugar("A", 7), Wash.of(DAY, "B", 9, 300));
    double other = Infestation.of(Wash.of(DAY, "B", 9, 300)).asAlcoholWash().chanceAbove(3);
    assertThat(apart.over().orElseThrow().distribution()[2])
        .as("other methods share nothing")
        .isCloseTo(chance * other, within(0.002));
  }

  private static Wash sugar(String hive, int mites) {
    return new Wash(
        DAY,
        hive,
        mites,
        OptionalInt.empty(),
        WashMethod.POWDERED_SUGAR,
        Frame.MIXED,
        "",
        OptionalDouble.empty());
  }

  /** A board stands for the days on which it lay; the answer looks to the winter bees. */
  @Test
  void anOutlookFromABoardBeginsWithIt() {
    BoardCount board = new BoardCount(DAY.minusDays(5), DAY, "A", 30);
    try (Workers workers = new Workers(1)) {
      CountOutlook outlook = CountOutlook.of(board, TEMPERATE, THREE, workers);
      assertThat(outlook.colony().start()).isEqualTo(DAY.minusDays(5));
      assertThat(outlook.colony().now()).isEqualTo(DAY.plusDays(1));
      assertThat(outlook.colony().until()).isEqualTo(LocalDate.of(2025, 10, 5));
      assertThat(outlook.colony().boards()).containsExactly(board);
      assertThat(outlook.colony().washes()).isEmpty();
      assertThat(outlook.colony().thresholds()).isEqualTo(THREE);
      CountOutlook.Ahead ahead = outlook.ahead().orElseThrow();
      assertThat(ahead.day()).isEqualTo(LocalDate.of(2025, 10, 5));
      assertThat(ahead.infestation())
          .isEqualTo(outlook.alone().on(Quantity.INFESTATION, ahead.day()));
      assertThat(outlook.today())
          .isEqualTo(outlook.alone().on(Quantity.INFESTATION, DAY.plusDays(1)));
      assertThat(outlook.decision().ranking()).isEmpty();
      assertThat(outlook.decision().reachesSpring()).isTrue();
      assertThat(outlook.alone().run().members()).isEqualTo(CountOutlook.COLONIES);
    }
  }

  /** Shares of what is known, and of what would be unknown without washes. */
  @Test
  void sensitivitiesAreThoseOfTheLogarithm() {
    ColonyCase c = Invented.colony();
    LocalDate day = LocalDate.of(2026, 8, 20);
    try (Workers workers = new Workers(1)) {
      Comparison plans =
          Assessment.of(c, new SamplerSettings(64, 1, 1), workers)
              .compare(UsualPlans.of(c).subList(0, 1));
      PlanRun run = plans.reference();
      List<Sensitivity> found = Sensitivity.of(plans, run, day, workers);
      double[] forecast =
          Arrays.stream(run.infestation(day)).map(v -> Math.log(Math.max(0.01, v))).toArray();
      List<UnknownSummary> unknowns = plans.posterior().summaries();
      List<PriorSensitivity> prior =
          PriorSensitivity.of(
              c.season(run.plan()),
              plans.posterior(),
              day,
              v -> StrictMath.log(Math.max(0.01, v)),
              1,
              workers);
      assertThat(found).hasSameSizeAs(unknowns);
      for (int i = 0; i < found.size(); i++) {
        Sensitivity s = found.get(i);
        UnknownSummary u = unknowns.get(i);
        assertThat(s.unknown()).isEqualTo(u);
        FirstOrderIndex index = FirstOrderIndex.of(plans.posterior().draws(u), forecast);
        assertThat(s.index().share()).isCloseTo(index.share(), within(1e-9));
        Optional<PriorSensitivity> beforehand =
            prior.stream()
                .filter(p -> p.unknown() == u.unknown())
                .filter(p -> p.course() == u.course() && p.season() == u.season())
                .findFirst();
        assertThat(s.beforehand()).isEqualTo(beforehand.orElseThrow().index());
      }
    }
  }

  /** Two hives count as 2 / 1.64 of one; what the place of the hives is, is asked of each. */
  @Test
  void climatesAreRankedByWhatHivesCountFor() {
    List<Wash> washes = Invented.WASHES;
    ColonyCase hive = Invented.colony();
    ColonyCase south =
        new ColonyCase(
            "S",
            ColonyModel.in(TEMPERATE.inSouth()),
            hive.start(),
            hive.now(),
            hive.until(),
            washes,
            List.of(),
            hive.thresholds(),
            hive.priors());
    SamplerSettings little = new SamplerSettings(64, 1, 1);
    try (Workers workers = new Workers(1)) {
      List<ClimateEvidence> one = ClimateEvidence.of(List.of(hive), little, workers);
      assertThat(one).extracting(ClimateEvidence::climate).hasSize(Catalog.CLIMATES.names().size());
      for (int i = 1; i < one.size(); i++) {
        assertThat(one.get(i).logEvidence()).isLessThanOrEqualTo(one.get(i - 1).logEvidence());
      }
      SeasonPosterior own = hive.posterior(little, workers, Progress.NONE);
      assertThat(evidence(one, "temperate")).isEqualTo(own.sample().logEvidence());
      ColonyCase seldom =
          new ColonyCase(
              "seldom",
              hive.model(),
              hive.start(),
              hive.now(),
              hive.until(),
              washes.subList(0, 2),
              List.of(),
              hive.thresholds(),
              hive.priors());
      assertThat(ClimateEvidence.of(List.of(seldom, hive), little, workers))
          .as("two washes say nothing")
          .isEqualTo(one);
      List<ClimateEvidence> two = ClimateEvidence.of(List.of(hive, hive), little, workers);
      assertThat(evidence(two, "temperate"))
          .isCloseTo(2 / 1.64 * own.sample().logEvidence(), within(1e-9));
      SeasonPosterior turned = south.posterior(little, workers, Progress.NONE);
      assertThat(evidence(ClimateEvidence.of(List.of(south), little, workers), "temperate"))
          .isEqualTo(turned.sample().logEvidence())
          .isNotEqualTo(own.sample().logEvidence());
    }
  }

  private static double evidence(List<ClimateEvidence> ranked, String climate) {
    return ranked.stream()
        .filter(e -> e.climate().equals(climate))
        .findFirst()
        .orElseThrow()
        .logEvidence();
  }

  @Test
  void farBetterIsTwentyTimesLikelier() {
    ClimateEvidence best = new ClimateEvidence("boreal", -10);
    ClimateEvidence near = new ClimateEvidence("temperate", -10 - Math.log(19.9));
    ClimateEvidence far = new ClimateEvidence("subtropical", -10 - Math.log(20.1));
    List<ClimateEvidence> ranked = List.of(best, near, far);
    assertThat(ClimateEvidence.farBetter(ranked, "subtropical")).contains(best);
    assertThat(ClimateEvidence.farBetter(ranked, "temperate")).isEmpty();
    assertThat(ClimateEvidence.farBetter(ranked, "boreal")).isEmpty();
  }
}
