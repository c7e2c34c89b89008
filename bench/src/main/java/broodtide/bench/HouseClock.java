package broodtide.bench;

import broodtide.engine.DailyEngine;
import broodtide.engine.DayObserver;
import broodtide.engine.Ensemble;
import broodtide.engine.Progress;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import com.sun.management.OperatingSystemMXBean;
import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Locale;

/**
 * What a beekeeper waits for: the posterior of 4,096 colonies from four washes and the search for
 * the best day, wall time, and ensembles that grow in colonies, days and particles. The best of
 * several. Rows are "group, key, what, time, unit, note", parted by tabs, for {@code side-by-side}.
 */
public final class HouseClock {
  private static final int ROUNDS = 8;
  private static final int CPU_ROUNDS = 4;

  /** Colony-days that show on the processor's clock, which ticks slowly. */
  private static final long ENOUGH = 20_000_000;

  private static final OperatingSystemMXBean PROCESS =
      (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

  private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  private HouseClock() {}

  /** Prints the rows. */
  public static void main(String[] none) {
    try (Workers one = new Workers(1);
        Workers two = new Workers(2)) {
      SeasonPosterior sample = BenchCase.sample(two);
      BenchCase.windows(sample, one);
      ensembles(one);
      allocation();
      posteriors(one, two);
      Took windows = best(() -> BenchCase.windows(sample, two));
      row("windows", "windows: 30 days, 6 controls, 512 colonies, two threads", windows, "");
      Took serial = best(ensemble(16384, 365), one);
      Took parallel = best(ensemble(16384, 365), two);
      row("ensemble1", "a year of 16,384 colonies, one thread", serial, "");
      row("ensemble2", "the same, two threads", parallel, worth(serial, parallel));
    }
  }

  /** What the day loop takes from the heap; making the engine before it is not counted. */
  private static void allocation() {
    Scenario scenario = BenchSeason.scenario();
    StandardColony start = StandardColony.on(scenario.model(), scenario.start());
    List<SimulatedColony> members = BenchSeason.members(Ensemble.BLOCK);
    long least = Long.MAX_VALUE;
    for (int round = 0; round < ROUNDS; round++) {
      DailyEngine engine = DailyEngine.of(scenario, start, members);
      long from = THREADS.getCurrentThreadAllocatedBytes();
      engine.run(DayObserver.NONE);
      least = Math.min(least, THREADS.getCurrentThreadAllocatedBytes() - from);
    }
    String what =
        String.format(
            Locale.ROOT, "memory taken by the day loop, a year of %d colonies", Ensemble.BLOCK);
    row("house", "allocated", what, least, "bytes", "");
  }

  /** Processor time per colony-day of ensembles of many sizes, and per particle of posteriors. */
  private static void ensembles(Workers one) {
    for (int colonies : new int[] {1024, 4096, 16384}) {
      ensemble(colonies, 365, one);
    }
    ensemble(4096, 730, one);
    ensemble(4096, 1460, one);
  }

  private static void posteriors(Workers one, Workers two) {
    for (int particles : new int[] {1024, 2048, 4096, 8192}) {
      posterior(particles, one);
    }
    Took alone = best(() -> BenchCase.posterior(4096, one));
    Took together = best(() -> BenchCase.posterior(4096, two));
    row("posterior1", "posterior: 4,096 colonies, four washes, one thread", alone, "");
    row("posterior2", "the same, two threads", together, worth(alone, together));
  }

  private static void posterior(int particles, Workers workers) {
    Took took = best(() -> BenchCase.posterior(particles, workers));
    row(
        "particles",
        "particles" + particles,
        String.format(Locale.ROOT, "posterior of %,d colonies", particles),
        1e3 * took.processor() / particles,
        "us per colony",
        String.format(Locale.ROOT, "%.0f ms", took.processor()));
  }

  private static void ensemble(int colonies, int days, Workers workers) {
    Shared work = ensemble(colonies, days);
    int times = (int) Math.max(1, ENOUGH / colonies / days);
    double least = Double.MAX_VALUE;
    for (int round = 0; round < CPU_ROUNDS; round++) {
      long from = PROCESS.getProcessCpuTime();
      for (int i = 0; i < times; i++) {
        work.on(workers);
      }
      least = Math.min(least, (double) (PROCESS.getProcessCpuTime() - from) / times);
    }
    row(
        "line",
        "line" + colonies + "x" + days,
        String.format(Locale.ROOT, "%,d colonies, %,d days", colonies, days),
        least / colonies / days,
        "ns per colony-day",
        String.format(Locale.ROOT, "%.0f ms", least / 1e6));
  }

  /** Work that threads share. */
  @FunctionalInterface
  private interface Shared {
    void on(Workers workers);
  }

  private static Shared ensemble(int colonies, int days) {
    Scenario scenario = BenchSeason.scenario(days);
    StandardColony start = StandardColony.on(scenario.model(), scenario.start());
    List<SimulatedColony> members = BenchSeason.members(colonies);
    return workers ->
        Ensemble.run(
            scenario, start, members, (first, count) -> DayObserver.NONE, workers, Progress.NONE);
  }

  private static Took best(Shared work, Workers workers) {
    return best(() -> work.on(workers));
  }

  /** The least of several, in ms: by the clock on the wall, and of all processors together. */
  private record Took(double wall, double processor) {}

  private static Took best(Runnable work) {
    double wall = Double.MAX_VALUE;
    double processor = Double.MAX_VALUE;
    for (int round = 0; round < ROUNDS; round++) {
      long from = System.nanoTime();
      long before = PROCESS.getProcessCpuTime();
      work.run();
      processor = Math.min(processor, (PROCESS.getProcessCpuTime() - before) / 1e6);
      wall = Math.min(wall, (System.nanoTime() - from) / 1e6);
    }
    return new Took(wall, processor);
  }

  private static String worth(Took one, Took two) {
    return String.format(Locale.ROOT, "%.2f times as fast as one; ", one.wall() / two.wall());
  }

  private static void row(String key, String what, Took took, String note) {
    String all = String.format(Locale.ROOT, "%s%.0f ms of processor", note, took.processor());
    row("house", key, what, took.wall(), "ms", all);
  }

  private static void row(
      String group, String key, String what, double time, String unit, String note) {
    System.out.println(
        String.join("\t", group, key, what, String.format(Locale.ROOT, "%.3f", time), unit, note));
  }
}
