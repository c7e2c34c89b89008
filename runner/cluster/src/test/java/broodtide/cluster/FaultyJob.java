package broodtide.cluster;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.HiveRow;
import broodtide.control.Plan;
import broodtide.engine.Workers;
import broodtide.fit.SeasonBanks;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * The job with work that goes wrong. The first word says how; the second names a folder where
 * executors leave a mark; the others are the job's.
 */
public final class FaultyJob {
  /** The hive that fails. */
  static final String BAD = "Hive 00003";

  /** From this hive on, work waits when it is held. */
  static final String HELD = "Hive 00004";

  /** A file that lets held work go on. */
  static final String GO = "go";

  /** How the names of marks begin; the number of the process follows. */
  static final String AT_WORK = "at-work-";

  /** Likewise, of banks of seasons; the process and the bank's own number follow. */
  static final String SEASONS = "seasons-";

  /** Likewise, of executors that wait. */
  static final String WAITS = "waits-";

  private static final long PATIENCE = TimeUnit.MINUTES.toNanos(10);
  private static final long PAUSE = 20;
  private static final int MEGABYTE = 1 << 20;

  private FaultyJob() {}

  /** What goes wrong. */
  enum Fault {
    /** Nothing. */
    NONE,
    /** Later hives wait, so that a test can stop something in the middle. */
    HELD,
    /** One hive throws. */
    THROWN,
    /** One hive fills the memory the first time. */
    MEMORY_ONCE,
    /** One hive always fills the memory. */
    MEMORY
  }

  /**
   * Runs the job and exits.
   *
   * @param args the fault, the folder, and the job's own words
   */
  public static void main(String[] args) {
    HiveWork work = new Marked(Fault.valueOf(args[0]), args[1]);
    String[] words = Arrays.copyOfRange(args, 2, args.length);
    System.exit(ClusterMain.run(work, System.out, System.err, JobRun.TODAY, words));
  }

  /**
   * The core's work, with a fault before it.
   *
   * @param fault what goes wrong
   * @param folder where marks go
   */
  private record Marked(Fault fault, String folder) implements HiveWork {
    @Override
    public HiveRow of(
        ColonyCase c, List<Plan> plans, Question question, SeasonBanks banks, Workers workers) {
      long process = ProcessHandle.current().pid();
      isFirst(AT_WORK + process);
      isFirst(SEASONS + process + "-" + System.identityHashCode(banks));
      boolean bad = c.colony().equals(BAD);
      switch (fault) {
        case NONE -> {}
        case HELD -> {
          if (c.colony().compareTo(HELD) >= 0) {
            isFirst(WAITS + process);
            await();
          }
        }
        case THROWN -> {
          if (bad) {
            throw new IllegalStateException("the bees have flown");
          }
        }
        case MEMORY_ONCE -> {
          if (bad && isFirst("filled")) {
            fill();
          }
        }
        case MEMORY -> {
          if (bad) {
            fill();
          }
        }
      }
      return YardWorker.CORE.of(c, plans, question, banks, workers);
    }

    /** Leaves a mark; false when it is there. */
    private boolean isFirst(String mark) {
      try {
        Files.createFile(Path.of(folder, mark));
        return true;
      } catch (FileAlreadyExistsException e) {
        return false;
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    private void await() {
      long from = System.nanoTime();
      while (!Files.exists(Path.of(folder, GO))) {
        if (System.nanoTime() - from > PATIENCE) {
          throw new IllegalStateException("nobody let the work go on");
        }
        try {
          Thread.sleep(PAUSE);
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
          throw new IllegalStateException("the task was stopped", e);
        }
      }
    }

    private static void fill() {
      List<byte[]> all = new ArrayList<>();
      while (all.size() < Integer.MAX_VALUE) {
        all.add(new byte[MEGABYTE]);
      }
    }
  }
}
