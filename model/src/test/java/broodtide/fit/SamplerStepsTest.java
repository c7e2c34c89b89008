package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.engine.Progress;
import broodtide.measure.OutOfRange;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each part of the sampler's work, where it can be worked out in another way. */
class SamplerStepsTest {
  private final List<Integer> told = new ArrayList<>();
  private final List<double[][]> asked = new ArrayList<>();

  private TemperedSampler.LogLikelihood each(ToDoubleFunction<double[]> one) {
    return (z, out) -> {
      asked.add(Arrays.stream(z).map(double[]::clone).toArray(double[][]::new));
      for (int i = 0; i < out.length; i++) {
        out[i] = one.applyAsDouble(z[i]);
      }
    };
  }

  private TemperedSampler.Sample sampled(
      TemperedSampler sampler, ToDoubleFunction<double[]> likelihood) {
    return sampler.sample(
        each(likelihood),
        (done, all) -> {
          assertThat(all).isEqualTo(1000);
          told.add(done);
        });
  }

  private static double mean(double[][] z, ToDoubleFunction<double[]> of) {
    return Arrays.stream(z).mapToDouble(of).average().orElseThrow();
  }

  /** Sixteen Sobol points lie in sixteen equal parts of each unknown, wherever they are shifted. */
  @Test
  void thePriorsPointsAreEquallyFarApart() {
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    double[][] z = new TemperedSampler(5, 16, 1, 3).prior();
    Set<Double> first = new HashSet<>();
    for (int d = 0; d < 5; d++) {
      int at = d;
      double[] u =
          Arrays.stream(z).mapToDouble(v -> normal.cumulativeProbability(v[at])).sorted().toArray();
      for (int i = 1; i < u.length; i++) {
        assertThat(u[i] - u[i - 1]).isCloseTo(1 / 16.0, within(1e-9));
      }
      first.add(u[0]);
    }
    assertThat(first).as("each unknown has a shift of its own").hasSize(5);
    assertThat(new TemperedSampler(5, 16, 1, 4).prior()[0]).isNotEqualTo(z[0]);
  }

  /** A likelihood that tells nothing leaves the prior as it was, moves or not. */
  @Test
  void nothingIsLearnedFromNothing() {
    TemperedSampler.Sample s = sampled(new TemperedSampler(2, 4096, 4, 7), z -> -2);
    assertThat(s.steps()).isEqualTo(1);
    assertThat(s.logEvidence()).isCloseTo(-2, within(1e-12));
    assertThat(told).containsExactly(125, 250, 375, 500, 625, 750, 875, 1000);
    for (int d = 0; d < 2; d++) {
      int at = d;
      assertThat(mean(s.z(), z -> z[at])).isCloseTo(0, within(0.05));
      assertThat(mean(s.z(), z -> z[at] * z[at])).isCloseTo(1, within(0.08));
    }
    assertThat(mean(s.z(), z -> z[0] * z[1])).isCloseTo(0, within(0.05));
  }

  /** What is accepted in the last round is where its particles are now. */
  @Test
  void acceptanceIsTheShareThatMovedLast() {
    TemperedSampler.Sample s = sampled(new TemperedSampler(2, 512, 3, 7), z -> -z[0] * z[0]);
    double[][] tried = asked.get(asked.size() - 1);
    long there = IntStream.range(0, 512).filter(i -> Arrays.equals(s.z()[i], tried[i])).count();
    assertThat(s.acceptance()).isEqualTo(there / 512.0).isBetween(0.1, 0.9);
    assertThat(asked).hasSize(1 + (s.steps() - 1) * 3 + 6);
    assertThat(told).hasSize((s.steps() - 1) * 3 + 6);
  }

  /** Half of the effective size is left after each step but the last. */
  @ParameterizedTest
  @CsvSource({"40,1", "3,2", "900,3"})
  void aStepGoesAsFarAsHalfOfTheEffectiveSize(double sharpness, int seed) {
    TemperedSampler sampler = new TemperedSampler(2, 1024, 2, seed);
    ToDoubleFunction<double[]> likelihood = z -> -sharpness * Math.pow(z[0] - 0.3 * z[1], 2);
    double[] logs = Arrays.stream(sampler.prior()).mapToDouble(likelihood).toArray();
    double low = 0;
    double high = 1;
    for (int i = 0; i < 50; i++) {
      double t = (low + high) / 2;
      double sum = Arrays.stream(logs).map(l -> Math.exp(t * l)).sum();
      double squares = Arrays.stream(logs).map(l -> Math.exp(2 * t * l)).sum();
      if (sum * sum / squares / 1024 > 0.5) {
        low = t;
      } else {
        high = t;
      }
    }
    TemperedSampler.Sample s = sampled(sampler, likelihood);
    assertThat(s.steps()).isGreaterThan(1);
    assertThat(told.subList(0, 2))
        .containsExactly((int) Math.round(500 * low), (int) Math.round(1000 * low));
    assertThat(told).isSorted().endsWith(1000);
  }

  /** One step suffices as long as half is left; its evidence is the prior's mean likelihood. */
  @Test
  void theEvidenceOfOneStepIsTheMeanLikelihood() {
    TemperedSampler sampler = new TemperedSampler(3, 256, 1, 21);
    ToDoubleFunction<double[]> likelihood = z -> 4 - 0.4 * z[1] * z[1];
    TemperedSampler.Sample s = sampled(sampler, likelihood);
    assertThat(s.steps()).isEqualTo(1);
    double mean = mean(sampler.prior(), z -> Math.exp(likelihood.applyAsDouble(z)));
    assertThat(s.logEvidence()).isCloseTo(Math.log(mean), within(1e-12));
  }

  /**
   * Two unknowns whose difference was seen: steps are tried along the spread that the particles
   * then have, 2.38 over the root of the number of unknowns times as long.
   */
  @Test
  void stepsAreTriedAlongTheSpreadOfTheParticles() {
    TemperedSampler sampler = new TemperedSampler(2, 8192, 1, 5);
    // precision 1 + 0.6 of each and -0.6 of both, whose inverse is (1.6, 0.6) over 2.2
    TemperedSampler.Sample s = sampled(sampler, z -> -0.3 * Math.pow(z[0] - z[1], 2));
    assertThat(s.steps()).isEqualTo(1);
    double[][] tried = asked.get(1);
    double longer = 1 + 2.38 * 2.38 / 2;
    assertThat(mean(tried, z -> z[0] * z[0])).isCloseTo(longer * 1.6 / 2.2, within(0.12));
    assertThat(mean(tried, z -> z[1] * z[1])).isCloseTo(longer * 1.6 / 2.2, within(0.12));
    assertThat(mean(tried, z -> z[0] * z[1])).isCloseTo(longer * 0.6 / 2.2, within(0.12));
    assertThat(mean(tried, z -> z[0])).isCloseTo(0, within(0.08));
  }

  /** Seen at 1 with an error of a tenth: normal, mean 1 / 1.01 and variance 0.01 / 1.01. */
  @Test
  void oneUnknownSeenWithAnError() {
    TemperedSampler.Sample s =
        sampled(new TemperedSampler(1, 4096, 4, 2), z -> -50 * Math.pow(z[0] - 1, 2));
    double mean = mean(s.z(), z -> z[0]);
    assertThat(mean).isCloseTo(1 / 1.01, within(0.006));
    assertThat(mean(s.z(), z -> Math.pow(z[0] - mean, 2))).isCloseTo(0.01 / 1.01, within(8e-4));
    // N(1; 0, 1.01) times the root of 2 pi 0.01 that the likelihood lacks
    double evidence = 0.5 * Math.log(0.01) - 0.5 * Math.log(1.01) - 0.5 / 1.01;
    assertThat(s.logEvidence()).isCloseTo(evidence, within(0.03));
  }

  @Test
  void theEffectiveSizeCountsRepeats() {
    TemperedSampler.Sample s =
        sampled(new TemperedSampler(2, 400, 1, 9), z -> -30 * Math.pow(z[0] + z[1], 2));
    Map<List<Double>, Long> repeats =
        Arrays.stream(s.z())
            .map(z -> List.of(z[0], z[1]))
            .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
    double squares = repeats.values().stream().mapToDouble(n -> n * n).sum();
    assertThat(repeats.size()).isLessThan(400);
    assertThat(s.effectiveSize()).isCloseTo(400 * 400 / squares, within(1e-9));
  }

  @Test
  void theSamplesOwnFiguresStayWithOtherUnknowns() {
    double[][] z = {{1}};
    double[][] other = {{1, 2}};
    assertThat(new TemperedSampler.Sample(z, 3, 0.4, 5, -6).with(other))
        .isEqualTo(new TemperedSampler.Sample(other, 3, 0.4, 5, -6));
  }

  @Test
  void settingsHaveTheirRange() {
    new TemperedSampler(1, 16, 1, 0);
    new TemperedSampler(81, 1_000_000, 100, 0);
    for (int[] wrong :
        new int[][] {
          {0, 16, 1}, {82, 16, 1}, {1, 15, 1}, {1, 1_000_001, 1}, {1, 16, 0}, {1, 16, 101}
        }) {
      assertThatThrownBy(() -> new TemperedSampler(wrong[0], wrong[1], wrong[2], 0))
          .isInstanceOf(OutOfRange.class);
    }
  }

  private static long[] counts(int[] parents, int of) {
    long[] out = new long[of];
    for (int p : parents) {
      out[p]++;
    }
    return out;
  }

  /** Strides of one length meet each weight as often as it says, to less than one. */
  @Test
  void weightsAreDrawnAsOftenAsTheySay() {
    for (int seed = 0; seed < 50; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double[] halves = {0.5, 0.25, 0.125, 0.125};
      assertThat(counts(TemperedSampler.resample(halves, 8, random), 4))
          .containsExactly(4, 2, 1, 1);
      double[] odd = {0.07, 0.41, 0.3, 0.22};
      long[] drawn = counts(TemperedSampler.resample(odd, 10, random), 4);
      for (int i = 0; i < 4; i++) {
        assertThat(drawn[i])
            .isBetween((long) Math.floor(10 * odd[i]), (long) Math.ceil(10 * odd[i]));
      }
      // what rounding leaves of the last weight
      int[] few = TemperedSampler.resample(new double[] {0.3, 0.3, 0.3}, 1000, random);
      assertThat(Arrays.stream(counts(few, 3)).sum()).isEqualTo(1000);
      assertThat(counts(few, 3)).doesNotContain(0);
    }
  }

  /** On average exactly as often as it says, and in any order. */
  @Test
  void everyPlaceSeesEveryParent() {
    int seeds = 4000;
    long[] third = new long[5];
    double rare = 0;
    for (int seed = 0; seed < seeds; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double[] even = {0.2, 0.2, 0.2, 0.2, 0.2};
      int[] parents = TemperedSampler.resample(even, 5, random);
      assertThat(Arrays.stream(parents).sorted()).containsExactly(0, 1, 2, 3, 4);
      third[parents[2]]++;
      rare += counts(TemperedSampler.resample(new double[] {0.05, 0.95}, 4, random), 2)[0];
    }
    for (long times : third) {
      assertThat(times / (double) seeds).isCloseTo(0.2, within(0.03));
    }
    assertThat(rare / seeds).isCloseTo(4 * 0.05, within(0.03));
  }

  /** Steps end where half of the particles asked for are left, of however many draws. */
  @Test
  void moreDrawsTakeFewerSteps() {
    ToDoubleFunction<double[]> seen = z -> -0.5 * z[0] * z[0] / (0.02 * 0.02);
    TemperedSampler sampler = new TemperedSampler(1, 256, 2, 5);
    TemperedSampler.Sample few = sampled(sampler, seen);
    double[][] many = new TemperedSampler(1, 64 * 256, 2, 5).prior();
    double[] known = new double[many.length];
    each(seen).of(many, known);
    TemperedSampler.Sample more =
        sampler.sample(new TemperedSampler.Known(many, known), each(seen), Progress.NONE);
    assertThat(few.steps()).isGreaterThan(1);
    assertThat(more.steps()).isEqualTo(1);
    assertThat(more.z()).hasNumberOfRows(256);
    // mean likelihood under the prior: sd / sqrt(sd^2 + 1)
    assertThat(more.logEvidence()).isCloseTo(Math.log(0.02 / Math.sqrt(1.0004)), within(0.01));
    assertThat(Math.sqrt(mean(more.z(), z -> z[0] * z[0]))).isCloseTo(0.02, within(0.002));
  }
}
