package broodtide.bench;

import broodtide.engine.DailyEngine;
import broodtide.engine.DayObserver;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.List;
import java.util.Locale;

/** Prints the daily engine's processor time per colony-day, the best of many rounds, per width. */
public final class LaneClock {
  private static final ThreadMXBean CLOCK = ManagementFactory.getThreadMXBean();
  private static final int ROUNDS = 60;
  private static final int COLONIES = 512;

  /** Doubles in a cache line. */
  private static final int LINE = 8;

  /** Moves what is made after it, so that rows lie otherwise in memory from round to round. */
  private double[] between = {};

  private LaneClock() {}

  /** Widths are the arguments. */
  public static void main(String[] widths) {
    Scenario scenario = BenchSeason.scenario();
    StandardColony start = StandardColony.on(scenario.model(), scenario.start());
    LaneClock clock = new LaneClock();
    for (String width : widths) {
      int w = Integer.parseInt(width);
      System.out.printf(Locale.ROOT, "%d %.3f%n", w, clock.best(scenario, start, w));
    }
  }

  private double best(Scenario scenario, StandardColony start, int width) {
    List<SimulatedColony> members = BenchSeason.members(width);
    int blocks = Math.max(1, COLONIES / width);
    double best = Double.MAX_VALUE;
    for (int round = 0; round < ROUNDS; round++) {
      long spent = 0;
      between = new double[between.length % LINE + 1];
      for (int k = 0; k < blocks; k++) {
        DailyEngine engine = DailyEngine.of(scenario, start, members);
        long from = CLOCK.getCurrentThreadCpuTime();
        engine.run(DayObserver.NONE);
        spent += CLOCK.getCurrentThreadCpuTime() - from;
      }
      best = Math.min(best, (double) spent / blocks / width / scenario.days());
    }
    return best;
  }
}
