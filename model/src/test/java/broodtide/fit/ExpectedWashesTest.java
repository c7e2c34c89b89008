package broodtide.fit;

import static broodtide.fit.Invented.season;
import static broodtide.fit.Invented.strips;
import static broodtide.fit.Invented.wash;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.Workers;
import broodtide.wash.Frame;
import broodtide.wash.HalfCup;
import broodtide.wash.Wash;
import broodtide.wash.WashMethod;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.apache.commons.math3.distribution.PascalDistribution;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** What washes would show of a few colonies, against plain sums over the same colonies. */
class ExpectedWashesTest {
  private static final Workers ONE = new Workers(1);
  private static final int COLONIES = 24;

  @AfterAll
  static void close() {
    ONE.close();
  }

  private static SeasonPosterior of(Scenario past, List<Wash> washes) {
    return Invented.posterior(past, washes, COLONIES, 4, ONE);
  }

  /** A roll of powdered sugar off the brood nest whose bees nobody counted. */
  private static Wash roll(int day, int mites) {
    return new Wash(
        Invented.START.plusDays(day),
        "A",
        mites,
        OptionalInt.empty(),
        WashMethod.values()[WashMethod.values().length - 1],
        Frame.values()[0],
        "",
        OptionalDouble.empty());
  }

  private static double size(Wash w, double scatter) {
    double recovery = w.method().recovery().sd() / w.method().recovery().mean();
    double frame = w.frame().factor().sd() / w.frame().factor().mean();
    double cup = w.beesAssumed() ? HalfCup.usual().sd() / HalfCup.usual().bees() : 0;
    return 1 / (1 / scatter + recovery * recovery + frame * frame + cup * cup);
  }

  private static double chance(int count, double mean, double size) {
    return Math.exp(Invented.logChance(count, mean, size));
  }

  /** The whole season, day by day. */
  private static EnsembleRun whole(SeasonPosterior posterior, Scenario season) {
    return posterior.run(season, Set.of(Quantity.INFESTATION, Quantity.ADULTS), ONE, Progress.NONE);
  }

  private static double[] living(
      SeasonPosterior posterior, EnsembleRun run, LocalDate from, LocalDate day) {
    double[] least = run.values(Quantity.ADULTS, from);
    for (LocalDate d = from; !d.isAfter(day); d = d.plusDays(1)) {
      double[] adults = run.values(Quantity.ADULTS, d);
      for (int i = 0; i < least.length; i++) {
        least[i] = Math.min(least[i], adults[i]);
      }
    }
    double[] out = new double[least.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = posterior.survival().enough(least[i]) * posterior.survival().spared(from, day);
    }
    return out;
  }

  @Test
  void eachColonyHasItsMeanSizeAndLife() {
    Scenario past = season(30, strips(12));
    SeasonPosterior posterior = of(past, List.of(wash(0, 2, 310), wash(20, 3, 300)));
    List<Wash> washes = List.of(roll(10, 0), wash(20, 0, 250), wash(45, 0, 40));
    LocalDate[] from = {Invented.START, Invented.START, Invented.START.plusDays(20)};
    List<ExpectedWashes.Parts> parts = ExpectedWashes.parts(posterior, past.plan(), washes, ONE);
    Scenario longer = new Scenario(past.model(), past.plan(), past.start(), 45);
    EnsembleRun run = whole(posterior, longer);
    double[] scatter = posterior.dispersions();
    assertThat(parts).hasSize(3);
    for (int w = 0; w < 3; w++) {
      Wash wash = washes.get(w);
      double[] truth = run.values(Quantity.INFESTATION, wash.date());
      double[] alive = living(posterior, run, from[w], wash.date());
      for (int i = 0; i < COLONIES; i++) {
        double mean = Math.min(wash.beesOrAssumed(), wash.exposure() * truth[i] / 100);
        assertThat(parts.get(w).means()[i]).isCloseTo(mean, within(1e-9 * (1 + mean)));
        assertThat(parts.get(w).sizes()[i]).isCloseTo(size(wash, scatter[i]), within(1e-9));
        assertThat(parts.get(w).weights()[i]).isCloseTo(alive[i], within(1e-9));
      }
    }
  }

  @Test
  void aForecastMixesItsColonies() {
    Scenario past = season(20);
    SeasonPosterior posterior = of(past, List.of());
    List<Wash> washes = List.of(wash(0, 0, 300), wash(20, 0, 300));
    List<ExpectedWashes.Parts> parts = ExpectedWashes.parts(posterior, past.plan(), washes, ONE);
    List<CountDistribution> mixed = ExpectedWashes.of(posterior, past.plan(), washes, ONE);
    assertThat(mixed).hasSize(2);
    for (int w = 0; w < 2; w++) {
      double below = 0;
      double all = 0;
      for (int i = 0; i < COLONIES; i++) {
        double weight = parts.get(w).weights()[i];
        for (int y = 0; y <= 5; y++) {
          below += weight * chance(y, parts.get(w).means()[i], parts.get(w).sizes()[i]);
        }
        all += weight;
      }
      assertThat(mixed.get(w).atMost(5)).isCloseTo(below / all, within(1e-6));
    }
  }

  @Test
  void everyCountHasItsChanceAndTheRestStandsLast() {
    Scenario past = season(25);
    SeasonPosterior posterior = of(past, List.of(wash(5, 2, 300)));
    Wash asked = wash(25, 0, 12);
    ExpectedWashes.Chances chances = ExpectedWashes.chances(posterior, past.plan(), asked, ONE);
    ExpectedWashes.Parts parts =
        ExpectedWashes.parts(posterior, past.plan(), List.of(asked), ONE).get(0);
    assertThat(chances.byCount()).hasDimensions(13, COLONIES);
    assertThat(chances.living()).containsExactly(parts.weights(), within(1e-12));
    for (int i = 0; i < COLONIES; i++) {
      double left = 1;
      for (int y = 0; y < 12; y++) {
        double chance = chance(y, parts.means()[i], parts.sizes()[i]);
        assertThat(chances.byCount()[y][i]).isCloseTo(chance, within(1e-9));
        left -= chance;
      }
      assertThat(chances.byCount()[12][i]).isCloseTo(left, within(1e-9)).isNotNegative();
    }
    double[][] first = ExpectedWashes.byCount(posterior, new double[] {3, 500}, asked);
    assertThat(first).hasDimensions(13, 2);
    double mean = asked.exposure() * 0.03;
    double size = size(asked, posterior.dispersions()[0]);
    assertThat(first[2][0]).isCloseTo(chance(2, mean, size), within(1e-12));
    // five mites a bee are believed of no wash: one on every bee it is
    assertThat(first[2][1])
        .isCloseTo(chance(2, 12, size(asked, posterior.dispersions()[1])), within(1e-12));
  }

  /** A size that is a whole number makes it the distribution of failures before so many hits. */
  @Test
  void theChanceIsThatOfANegativeBinomial() {
    PascalDistribution pascal = new PascalDistribution(3, 3 / (3 + 2.5));
    assertThat(chance(4, 2.5, 3)).isCloseTo(pascal.probability(4), within(1e-12));
  }

  @Test
  void everyWashStandsInWhatWasExpected() {
    Scenario past = season(40);
    SeasonPosterior posterior = of(past, List.of(wash(0, 2, 310), wash(35, 9, 300)));
    List<ExpectedWashes.Check> checks = ExpectedWashes.checks(posterior, ONE);
    assertThat(checks).extracting(ExpectedWashes.Check::wash).isEqualTo(posterior.washes());
    List<ExpectedWashes.Parts> parts =
        ExpectedWashes.parts(posterior, past.plan(), posterior.washes(), ONE);
    for (int w = 0; w < 2; w++) {
      ExpectedWashes.Parts p = parts.get(w);
      int seen = posterior.washes().get(w).mites();
      double place = 0;
      double all = 0;
      for (int i = 0; i < COLONIES; i++) {
        for (int y = 0; y <= seen; y++) {
          double share = y < seen ? 1 : 0.5;
          place += share * p.weights()[i] * chance(y, p.means()[i], p.sizes()[i]);
        }
        all += p.weights()[i];
      }
      assertThat(checks.get(w).place()).isCloseTo(place / all, within(1e-6));
    }
  }

  @Test
  void theOuterTenthIsSurprising() {
    assertThat(new ExpectedWashes.Check(wash(0, 2, 300), 0.0499).surprising()).isTrue();
    assertThat(new ExpectedWashes.Check(wash(0, 2, 300), 0.05).surprising()).isFalse();
    assertThat(new ExpectedWashes.Check(wash(0, 2, 300), 0.95).surprising()).isFalse();
    assertThat(new ExpectedWashes.Check(wash(0, 2, 300), 0.9501).surprising()).isTrue();
  }

  @Test
  void washesOutsideTheSeasonAreNone() {
    Scenario past = season(10);
    SeasonPosterior posterior = of(past, List.of());
    assertThat(ExpectedWashes.parts(posterior, past.plan(), List.of(), ONE)).isEmpty();
    assertThat(ExpectedWashes.checks(posterior, ONE)).isEmpty();
    List<Wash> early = List.of(wash(-1, 0, 300));
    assertThatThrownBy(() -> ExpectedWashes.parts(posterior, past.plan(), early, ONE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("before the start");
  }
}
