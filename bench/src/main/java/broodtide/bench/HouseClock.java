package broodtide.bench;

import broodtide.engine.DayObserver;
import broodtide.engine.Ensemble;
import broodtide.engine.Member;
import broodtide.engine.Progress;
import broodtide.engine.Scenario;
import broodtide.engine.StartState;
import broodtide.engine.Workers;
import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Locale;

/**
 * Wall time of what a beekeeper waits for, best of several: the posterior of 4,096 colonies from
 * four washes, ensembles that grow in colonies and in days, and what a second thread is worth.
 */
public final class HouseClock {
  private static final int ROUNDS = 12;

  /** Colony-days that show on the processor's clock, which ticks slowly. */
  private static final long ENOUGH = 60_000_000;

  private static final OperatingSystemMXBean PROCESS =
      (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

  private HouseClock() {}

  /** Prints rows of a table in Markdown. */
  public static void main(String[] none) {
    try (Workers one = new Workers(1);
        Workers two = new Workers(2)) {
      double alone = best(() -> PosteriorBench.infer(4096, one));
      double together = best(() -> PosteriorBench.infer(4096, two));
      row("posterior, 4,096 colonies, four washes, one thread", alone, "");
      row("the same, two threads", together, worth(alone, together));
      for (int colonies : new int[] {1024, 4096, 16384}) {
        ensemble(colonies, 365, one);
      }
      ensemble(4096, 730, one);
      ensemble(4096, 1460, one);
      double serial = best(ensemble(16384, 365), one);
      double parallel = best(ensemble(16384, 365), two);
      row("16,384 colonies, 365 days, two threads", parallel, worth(serial, parallel));
    }
  }

  private static void ensemble(int colonies, int days, Workers workers) {
    Shared work = ensemble(colonies, days);
    double wall = best(work, workers);
    int times = (int) Math.max(1, ENOUGH / colonies / days);
    long from = PROCESS.getProcessCpuTime();
    for (int i = 0; i < times; i++) {
      work.on(workers);
    }
    double cpu = (double) (PROCESS.getProcessCpuTime() - from) / times;
    row(
        String.format(Locale.ROOT, "%,d colonies, %,d days, one thread", colonies, days),
        wall,
        String.format(Locale.ROOT, "%.1f ns of processor per colony-day", cpu / colonies / days));
  }

  /** Work that threads share. */
  @FunctionalInterface
  private interface Shared {
    void on(Workers workers);
  }

  private static Shared ensemble(int colonies, int days) {
    Scenario scenario = BenchSeason.scenario(days);
    StartState start = StartState.on(scenario.model(), scenario.start());
    List<Member> members = BenchSeason.members(colonies);
    return workers ->
        Ensemble.run(
            scenario, start, members, (first, count) -> DayObserver.NONE, workers, Progress.NONE);
  }

  private static double best(Shared work, Workers workers) {
    return best(() -> work.on(workers));
  }

  private static double best(Runnable work) {
    double best = Double.MAX_VALUE;
    for (int round = 0; round < ROUNDS; round++) {
      long from = System.nanoTime();
      work.run();
      best = Math.min(best, (System.nanoTime() - from) / 1e6);
    }
    return best;
  }

  private static String worth(double one, double two) {
    return String.format(Locale.ROOT, "%.2f times one thread", one / two);
  }

  private static void row(String what, double ms, String note) {
    System.out.printf(Locale.ROOT, "| %s | %.1f ms | %s |%n", what, ms, note);
  }
}
