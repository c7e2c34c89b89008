package broodtide.fit;

import static broodtide.fit.Invented.season;
import static broodtide.fit.Invented.wash;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.Workers;
import broodtide.wash.Wash;
import java.util.List;
import java.util.Set;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How usual a record is, against records that are invented and weighed in plain sums. */
class InventedRecordsTest {
  private static final Workers ONE = new Workers(1);
  private static final int COLONIES = 256;
  private static final int RECORDS = 300;
  private static final Scenario PAST = season(30);

  @AfterAll
  static void close() {
    ONE.close();
  }

  private static SeasonPosterior posterior(List<Wash> washes, int colonies) {
    return Invented.posterior(PAST, washes, colonies, 4, ONE);
  }

  /**
   * Log of the mean chance of a record over colonies, each count on the scale of log(1 + count).
   */
  private static double weight(int[] counts, double[][] means, double[] scatter) {
    double sum = 0;
    for (int i = 0; i < COLONIES; i++) {
      double log = 0;
      for (int w = 0; w < counts.length; w++) {
        log += Invented.logChance(counts[w], means[w][i], scatter[i]) + Math.log1p(counts[w]);
      }
      sum += Math.exp(log);
    }
    return Math.log(sum / COLONIES);
  }

  @ParameterizedTest
  @CsvSource({"2,4", "6,90", "1,30"})
  void aRecordIsAsUsualAsFewOthersAreRarer(int first, int second) {
    List<Wash> washes = List.of(wash(3, first, 310), wash(28, second, 300));
    Agreement found = Agreement.of(posterior(washes, 16), ONE);
    SeasonPosterior prior = posterior(List.of(), COLONIES);
    EnsembleRun run = prior.run(PAST, Set.of(Quantity.INFESTATION), ONE, Progress.NONE);
    double[][] means = new double[2][COLONIES];
    double[] sizes = prior.dispersions();
    for (int i = 0; i < COLONIES; i++) {
      for (int w = 0; w < 2; w++) {
        double truth = run.values(Quantity.INFESTATION, washes.get(w).date())[i] / 100;
        means[w][i] = Math.min(washes.get(w).beesOrAssumed(), washes.get(w).exposure() * truth);
      }
      Wash w = washes.get(0);
      double recovery = w.method().recovery().sd() / w.method().recovery().mean();
      double frame = w.frame().factor().sd() / w.frame().factor().mean();
      sizes[i] = 1 / (1 / sizes[i] + recovery * recovery + frame * frame);
    }
    double own = weight(new int[] {first, second}, means, sizes);
    RandomGenerator random = new Well19937c(17);
    int rarer = 0;
    for (int r = 0; r < RECORDS; r++) {
      int colony = random.nextInt(COLONIES);
      int[] counts = new int[2];
      for (int w = 0; w < 2; w++) {
        double rate =
            new GammaDistribution(random, sizes[colony], means[w][colony] / sizes[colony]).sample();
        counts[w] = rate > 0 ? new PoissonDistribution(random, rate, 1e-12, 100_000).sample() : 0;
      }
      rarer += weight(counts, means, sizes) <= own ? 1 : 0;
    }
    // 200 records against 300: a standard deviation of 0.045 at most
    assertThat(found.usual()).isCloseTo(rarer / (double) RECORDS, within(0.12));
    assertThat(found.checks()).hasSize(2);
  }

  private static ExpectedWashes.Check at(double place) {
    return new ExpectedWashes.Check(wash(0, 1, 300), place);
  }

  @Test
  void contradictionIsARareRecordOrAllWashesOutside() {
    assertThat(new Agreement(List.of(at(0.5)), 0.01).contradicts()).isFalse();
    assertThat(new Agreement(List.of(at(0.5)), 0.0099).contradicts()).isTrue();
    assertThat(new Agreement(List.of(at(0.01), at(0.99)), 0.5).contradicts()).isTrue();
    assertThat(new Agreement(List.of(at(0.01), at(0.5)), 0.5).contradicts()).isFalse();
    assertThat(new Agreement(List.of(), 0.5).allSurprising()).isFalse();
    assertThat(new Agreement(List.of(at(0.01)), 0.5).allSurprising()).isTrue();
  }

  @Test
  void withoutWashesNothingDisagrees() {
    Agreement none = Agreement.of(posterior(List.of(), 16), ONE);
    assertThat(none.checks()).isEmpty();
    assertThat(none.usual()).isEqualTo(1);
    assertThat(none.contradicts()).isFalse();
  }

  /** What records hang on is the visits, not what was found there. */
  @Test
  void visitsAreWashesWithoutTheirCounts() {
    List<Wash> washes = List.of(wash(3, 2, 310), wash(28, 4, 300));
    List<Wash> others = List.of(wash(3, 9, 310), wash(28, 0, 300));
    List<Wash> moved = List.of(wash(3, 2, 310), wash(29, 4, 300));
    List<Wash> larger = List.of(wash(3, 2, 310), wash(28, 4, 301));
    Agreement.Visits visits = Agreement.Visits.of(posterior(washes, 16));
    assertThat(visits.washes()).hasSize(2);
    assertThat(Agreement.Visits.of(posterior(others, 16))).isEqualTo(visits);
    assertThat(Agreement.Visits.of(posterior(moved, 16))).isNotEqualTo(visits);
    assertThat(Agreement.Visits.of(posterior(larger, 16))).isNotEqualTo(visits);
  }
}
