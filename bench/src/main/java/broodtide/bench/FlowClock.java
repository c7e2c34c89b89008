package broodtide.bench;

import broodtide.engine.PlainFlow;
import broodtide.engine.Quantity;
import broodtide.engine.Trajectory;
import broodtide.flow.FlowEngine;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Locale;

/**
 * The flow season in Java. Arguments: engine, commons or hipparchus; stages; tolerances. Checks a
 * tight run against the flow engine's on every day, then prints for each tolerance "tolerance ms
 * evaluations error": processor time of the best of many seasons, and the largest error on any day
 * against that tight run.
 */
public final class FlowClock {
  private static final ThreadMXBean CLOCK = ManagementFactory.getThreadMXBean();
  private static final int ROUNDS = 60;
  private static final double AGREES = 1e-7;

  private FlowClock() {}

  /** A way to run the season. */
  @FunctionalInterface
  private interface Way {
    PlainFlow.Run run(double tolerance);
  }

  /** Adults and mites of a tight run of the flow engine. */
  static PlainFlow.Run tight(int stages) {
    return engine(stages, 1e-13);
  }

  private static PlainFlow.Run engine(int stages, double tolerance) {
    FlowEngine.Run run =
        FlowEngine.run(BenchSeason.scenario(), BenchSeason.AVERAGE, stages, tolerance);
    Trajectory t = run.trajectory();
    return new PlainFlow.Run(t.of(Quantity.ADULTS), t.of(Quantity.MITES), run.evaluations());
  }

  private static Way way(String name, int stages) {
    PlainFlow plain = PlainFlow.of(BenchSeason.scenario(), BenchSeason.AVERAGE, stages);
    return switch (name) {
      case "engine" -> tolerance -> engine(stages, tolerance);
      case "commons" -> plain::commons;
      case "hipparchus" -> plain::hipparchus;
      default -> throw new IllegalArgumentException("engine, commons or hipparchus, not " + name);
    };
  }

  /** See above. */
  public static void main(String[] args) {
    int stages = Integer.parseInt(args[1]);
    Way way = way(args[0], stages);
    PlainFlow.Run tight = tight(stages);
    double apart = largest(way.run(1e-12), tight);
    if (!(apart <= AGREES)) {
      System.err.printf(Locale.ROOT, "differs from the flow engine by %.2g%n", apart);
      System.exit(3);
    }
    for (int i = 2; i < args.length; i++) {
      double tolerance = Double.parseDouble(args[i]);
      PlainFlow.Run run = way.run(tolerance);
      double best = Double.MAX_VALUE;
      for (int round = 0; round < ROUNDS; round++) {
        long from = CLOCK.getCurrentThreadCpuTime();
        run = way.run(tolerance);
        best = Math.min(best, (CLOCK.getCurrentThreadCpuTime() - from) / 1e6);
      }
      System.out.printf(
          Locale.ROOT, "%s %.3f %d %.2g%n", args[i], best, run.evaluations(), largest(run, tight));
    }
  }

  /** The largest difference of adults or mites on any day, as a share of one plus the size. */
  private static double largest(PlainFlow.Run run, PlainFlow.Run reference) {
    return Math.max(
        largest(run.adults(), reference.adults()), largest(run.mites(), reference.mites()));
  }

  private static double largest(double[] a, double[] b) {
    double worst = 0;
    for (int t = 0; t < a.length; t++) {
      worst = Math.max(worst, Math.abs(a[t] - b[t]) / (1 + Math.abs(b[t])));
    }
    return worst;
  }
}
