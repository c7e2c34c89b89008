package broodtide.bench;

import broodtide.engine.FlowEngine;
import broodtide.engine.Member;
import broodtide.engine.Scenario;
import broodtide.engine.Trajectory;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Locale;

/**
 * Prints processor time per season, evaluations, and the largest error on any day against a tight
 * run, for the flow engine at each number of stages. Arguments: tolerance, then stages.
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
          "%d %.3f %d %.2g%n",
          stages,
          best,
          run.evaluations(),
          FlowErrors.largest(run.trajectory(), tight));
    }
  }
}
