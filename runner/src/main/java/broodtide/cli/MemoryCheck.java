package broodtide.cli;

import broodtide.assessment.ColonyCase;
import broodtide.decision.MemoryNeed;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;

/** Refuses a run that this machine's Java has no memory for, before any work is done. */
final class MemoryCheck {
  /** Share of the heap that what is held may fill; the rest is for work under way. */
  private static final double SHARE = 0.8;

  /** Java keeps part of what it is given for moving things about. */
  private static final double KEPT_BACK = 1.1;

  private static final int MEGABYTE = 1 << 20;

  private MemoryCheck() {}

  /**
   * Checks the hungriest colony of a run; one is worked on after the other.
   *
   * @param cases the colonies
   * @param colonies simulated colonies
   * @param need what one colony needs
   * @param lower what can be lowered besides the simulated colonies, as in "lay fewer plans side by
   *     side"
   * @throws Refusal with the figure and what to lower when it does not fit
   */
  static void check(
      List<ColonyCase> cases, int colonies, Function<ColonyCase, MemoryNeed> need, String lower) {
    check(Runtime.getRuntime().maxMemory(), cases, colonies, need, lower);
  }

  /**
   * {@return how many colonies may be worked on at once, at least 1}
   *
   * @param heap bytes that Java may take
   * @param cases the colonies
   * @param colonies simulated colonies
   * @param need what one colony needs
   * @param threads most that are wanted
   */
  static int atOnce(
      long heap,
      List<ColonyCase> cases,
      int colonies,
      Function<ColonyCase, MemoryNeed> need,
      int threads) {
    long most = cases.stream().mapToLong(c -> need.apply(c).bytes(colonies)).max().orElseThrow();
    return (int) Math.max(1, Math.min(threads, (long) (heap * SHARE) / most));
  }

  static void check(
      long heap,
      List<ColonyCase> cases,
      int colonies,
      Function<ColonyCase, MemoryNeed> need,
      String lower) {
    MemoryNeed most =
        cases.stream()
            .map(need)
            .max(Comparator.comparingLong(n -> n.bytes(colonies)))
            .orElseThrow();
    long wanted = (long) (most.bytes(colonies) / SHARE);
    if (wanted <= heap) {
      return;
    }
    int fitting = most.fitting((long) (heap * SHARE)) / RunOptions.LEAST * RunOptions.LEAST;
    throw new Refusal(
        String.format(
            Locale.ROOT,
            "--colonies %d needs about %d MB of memory here, and Java may take %d MB;%s %s, or give"
                + " Java more, as in JAVA_TOOL_OPTIONS=-Xmx%dm",
            colonies,
            megabytes(wanted),
            heap / MEGABYTE,
            fitting < RunOptions.LEAST ? "" : " lower --colonies to " + fitting + " or less,",
            cases.size() == 1 ? lower : lower + ", take one hive at a time with --colony",
            megabytes((long) (wanted * KEPT_BACK))));
  }

  private static long megabytes(long bytes) {
    return (bytes + MEGABYTE - 1) / MEGABYTE;
  }
}
