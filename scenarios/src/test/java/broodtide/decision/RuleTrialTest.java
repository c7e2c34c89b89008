package broodtide.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.Invented;
import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.Handling;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import broodtide.measure.OutOfRange;
import broodtide.results.ResultsFile;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class RuleTrialTest {
  private static final int MEMBERS = 4096;
  private static final LocalDate JUNE = LocalDate.of(2026, 6, 1);

  /** A treatment that does nothing, so that infestations stay what they are. */
  private static final ControlTemplate INERT =
      new ControlTemplate(
          "inert",
          "Nothing at all",
          Optional.of("nothing"),
          MiticideCourse.once(
              "Nothing at all",
              new Miticide("inert", 1, 0, 0, 0, 0, -40, 60, Miticide.SupersRule.LABEL_DECIDES),
              ControlTemplate.FIRST_DAY),
          Optional.empty(),
          Handling.PLAIN,
          List.of(),
          List.of());

  private static RuleTrial play(
      ColonyCase c, WashRound round, int members, int threads, Rule... rules) {
    try (Workers workers = new Workers(threads)) {
      SeasonPosterior posterior = Invented.posterior(c, members, workers);
      return RuleTrial.of(c, posterior, round, List.of(rules), 11, workers, Progress.NONE);
    }
  }

  /**
   * Colonies all alike, washed by chance alone, treated without effect: on each day the chance to
   * treat is P(Bin(n, p) > c), with c the largest count that is not over the threshold.
   */
  @Tag("outside")
  @Test
  void chanceToTreatIsThatOfTheBinomial() {
    ColonyCase c = Invented.known(2.0);
    WashRound round = new WashRound(JUNE, JUNE.plusDays(90), 30, 300, 0.9, 0);
    Rule rule = new Rule.Threshold("3 with inert", OptionalDouble.of(3), INERT, 1);
    RuleResult result = play(c, round, MEMBERS, 2, rule).results().get(0);

    double misses = 0;
    double needless = 0;
    double variance = 0;
    try (Workers workers = new Workers(2)) {
      SeasonPosterior posterior = Invented.posterior(c, 16, workers);
      Comparison alone =
          Comparison.of(c, posterior, List.of(Plan.waiting("wait")), workers, Progress.NONE);
      for (RuleResult.WashDay day : result.days()) {
        double truth = alone.runs().get(0).infestation(day.day())[0];
        double treat =
            1 - new BinomialDistribution(null, 300, 0.009 * truth).cumulativeProbability(9);
        double error = 4 * Math.sqrt(treat * (1 - treat) / MEMBERS) + 1e-9;
        assertThat(day.treated()).as("%s", day.day()).isCloseTo(treat, within(error));
        double threshold = c.stages().thresholdOn(c.thresholds(), day.day()).orElseThrow();
        boolean over = 0.9 * truth > threshold;
        assertThat(day.over()).isEqualTo(over ? 1.0 : 0.0);
        misses += over ? 1 - treat : 0;
        needless += over ? 0 : treat;
        variance += treat * (1 - treat);
      }
    }
    double error = 4 * Math.sqrt(variance / MEMBERS);
    assertThat(RuleResult.mean(result.misses())).isCloseTo(misses, within(error));
    assertThat(RuleResult.mean(result.needless())).isCloseTo(needless, within(error));
    assertThat(misses).as("the case has both kinds of error").isGreaterThan(0.01);
  }

  /** When every wash must read over the threshold, the rule is a calendar. */
  @Test
  void aRuleThatAlwaysTreatsEqualsTheCalendar() {
    ColonyCase c = Invented.known(20);
    WashRound round = WashRound.usual(JUNE, JUNE.plusDays(60), 30, 300);
    ControlTemplate strips = Catalog.control("formic-strips");
    Rule always = new Rule.Threshold("0", OptionalDouble.of(0), strips, 45);
    Rule calendar =
        new Rule.Calendar(
            "calendar",
            List.of(
                new Rule.Placed(strips, JUNE.plusDays(61)),
                new Rule.Placed(strips, JUNE.plusDays(1))));
    RuleTrial trial = play(c, round, 64, 1, always, calendar);
    RuleResult a = trial.results().get(0);
    RuleResult b = trial.results().get(1);

    assertThat(a.treatments()).containsOnly(2.0);
    assertThat(a.winterBrood()).containsExactly(b.winterBrood());
    assertThat(a.lost()).containsExactly(b.lost());
  }

  /** Supers stand until 31 July in the temperate climate, and thymol must not be under them. */
  @Test
  void whatCannotBeBegunIsCountedAsHindered() {
    ColonyCase c = Invented.known(20);
    WashRound round = WashRound.usual(JUNE, JUNE.plusDays(60), 30, 300);
    Rule thymol = new Rule.Threshold("0", OptionalDouble.of(0), Catalog.control("thymol"), 44);
    RuleResult result = play(c, round, 64, 1, thymol).results().get(0);

    assertThat(result.blocked()).containsOnly(2.0);
    assertThat(result.treatments()).containsOnly(1.0);
    assertThat(result.misses()).containsOnly(2.0);
  }

  @Test
  void sameBytesOnOneThreadAndOnThreeAndARuleThatCannotRunIsNamed() {
    Rule[] rules = {
      RuleText.read("never"),
      RuleText.read("on 2025-01-05 with thymol"),
      RuleText.read("threshold with formic-strips"),
      RuleText.read("1.5 with formic-strips wait 60")
    };
    WashRound round = WashRound.usual(Invented.NOW.plusDays(7), Invented.NOW.plusDays(70), 21, 300);
    RuleTrial one = play(Invented.colony(), round, 256, 1, rules);
    RuleTrial three = play(Invented.colony(), round, 256, 3, rules);

    assertThat(json(three)).isEqualTo(json(one));
    assertThat(one.results()).hasSize(3);
    assertThat(one.refused())
        .singleElement()
        .satisfies(r -> assertThat(r.reason()).contains("2025-01-05", "thymol", "2026-07-09"));
  }

  @Test
  void rulesInWords() {
    assertThat(RuleText.read(" 2  with formic-slow "))
        .isInstanceOfSatisfying(
            Rule.Threshold.class,
            t -> {
              assertThat(t.perHundred()).hasValue(2);
              assertThat(t.apart()).as("14 days of action and 14 to settle").isEqualTo(28);
            });
    assertThat(RuleText.read("on 2026-12-20 with oxalic-dribble and on 2026-08-05 with thymol"))
        .isInstanceOfSatisfying(
            Rule.Calendar.class,
            c ->
                assertThat(c.treatments())
                    .extracting(Rule.Placed::day)
                    .containsExactly(LocalDate.of(2026, 8, 5), LocalDate.of(2026, 12, 20)));
    for (String wrong : List.of("", "sometimes", "2 with", "on Tuesday with thymol", "-1 with x")) {
      assertThatThrownBy(() -> RuleText.read(wrong)).isInstanceOf(OutOfRange.class);
    }
  }

  private static String json(RuleTrial trial) {
    ResultsFile file = new ResultsFile("rules", "test", 1, 256, List.of());
    file.add(trial);
    return file.text();
  }
}
