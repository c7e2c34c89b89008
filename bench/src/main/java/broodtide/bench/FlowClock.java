package broodtide.bench;

import broodtide.engine.FlowEngine;
import broodtide.engine.Member;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.Trajectory;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Locale;

/**
 * The flow season by the flow engine. Arguments: tolerance, then numbers of stages. Prints for each
 * "ms evaluations error adults mites": processor time of a season, the largest error on any day
 * against a tight run, and the last day of that run.
 */
public final class FlowClock {
  private static final ThreadMXBean CLOCK = ManagementFactory.getThreadMXBean();
  private static final int ROUNDS = 60;

  private FlowClock() {}

  /** See above. */
  public static void main(String[] args) {
    Scenario scenario = BenchSeason.scenario();
    Member member = BenchSeason.AVERAGE;
    double tolerance = Double.parseDouble(args[0]);
    for (int i = 1; i < args.length; i++) {
      int stages = Integer.parseInt(args[i]);
      Trajectory tight = FlowEngine.run(scenario, member, stages, 1e-13).trajectory();
      double best = Double.MAX_VALUE;
      FlowEngine.Run run = FlowEngine.run(scenario, member, stages, tolerance);
      for (int round = 0; round < ROUNDS; round++) {
        long from = CLOCK.getCurrentThreadCpuTime();
        run = FlowEngine.run(scenario, member, stages, tolerance);
        best = Math.min(best, (CLOCK.getCurrentThreadCpuTime() - from) / 1e6);
      }
      System.out.printf(
          Locale.ROOT,
          "%.3f %d %.2g %.10g %.10g%n",
          best,
          run.evaluations(),
          FlowErrors.largest(run.trajectory(), tight),
          tight.of(Quantity.ADULTS)[BenchSeason.DAYS],
          tight.of(Quantity.MITES)[BenchSeason.DAYS]);
    }
  }
}
