package broodtide.fit;

import broodtide.engine.EnsembleRun;
import broodtide.wash.Interval;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.Function;

/**
 * How much better forecasts scored than a plainer way to forecast.
 *
 * @param value 1 less the ratio of the mean scores: 1 perfect, 0 no better, below 0 worse
 * @param range 90 % range, from colonies drawn again with replacement (Efron 1979, Ann. Stat. 7:1);
 *     a single colony gives no width
 */
public record Skill(double value, Interval range) {
  private static final int DRAWS = 2000;
  private static final double LEVEL = 0.9;

  /** Scores of one colony, added up. */
  private record Scores(double own, double other) {
    Scores plus(Scores more) {
      return new Scores(own + more.own, other + more.other);
    }
  }

  /**
   * {@return the skill by the score on log counts}
   *
   * @param report marked forecasts, at least one
   * @param baseline the plainer forecast of a mark
   * @param seed seed of the random numbers
   */
  public static Skill of(
      Backtest.Report report, Function<Backtest.Mark, CountDistribution> baseline, long seed) {
    Map<String, Scores> byColony = new LinkedHashMap<>();
    for (Backtest.Mark m : report.marks()) {
      int came = m.held().mites();
      Scores one = new Scores(m.forecast().crpsOfLog(came), baseline.apply(m).crpsOfLog(came));
      byColony.merge(m.held().colony(), one, Scores::plus);
    }
    List<Scores> scores = List.copyOf(byColony.values());
    SplittableRandom random = Streams.of(seed, Streams.Purpose.BOOTSTRAP);
    double[] drawn = new double[DRAWS];
    for (int i = 0; i < DRAWS; i++) {
      drawn[i] = skill(random.ints(scores.size(), 0, scores.size()).mapToObj(scores::get).toList());
    }
    Arrays.sort(drawn);
    double tail = (1 - LEVEL) / 2;
    return new Skill(
        skill(scores),
        new Interval(
            EnsembleRun.quantile(drawn, tail), EnsembleRun.quantile(drawn, 1 - tail), LEVEL));
  }

  private static double skill(Collection<Scores> scores) {
    Scores all = scores.stream().reduce(new Scores(0, 0), Scores::plus);
    return 1 - all.own / all.other;
  }
}
