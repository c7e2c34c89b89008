package broodtide.campaign;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Many numbered cases on all cores. A case hangs on the seed and its number alone, so that one can
 * be run again by itself. The folder keeps the number of the next case, from which a later run goes
 * on, and every fault that was found.
 *
 * @param name names the files in the folder
 * @param folder where the state and the faults are kept
 * @param seed sets every case
 * @param batch cases from one note of the state to the next
 * @param patience a case may take this much processor time
 */
public record Campaign(String name, Path folder, long seed, int batch, Duration patience) {
  /** A case that is not done after this many times the patience, on the clock, is given up. */
  private static final int ROUNDS = 20;

  /** What is done for a number. */
  @FunctionalInterface
  public interface Trial {
    /**
     * Throws whatever shows a fault.
     *
     * @param number of the case
     * @param random set by seed and number
     */
    void run(long number, SplittableRandom random) throws Exception;
  }

  /**
   * Goes on to a number of cases and prints the count, the rate and the faults.
   *
   * @param count cases in all, those of earlier runs included
   * @param trial what is done
   * @return cases done by this call
   * @throws AssertionError when this run or an earlier one found faults
   */
  public long run(long count, Trial trial) throws IOException, InterruptedException {
    Files.createDirectories(folder);
    long first = next();
    long begun = System.nanoTime();
    ExecutorService threads =
        Executors.newFixedThreadPool(
            Runtime.getRuntime().availableProcessors(),
            task -> {
              Thread thread = new Thread(task);
              thread.setDaemon(true);
              return thread;
            });
    try {
      long told = begun;
      for (long at = first; at < count; ) {
        long end = Math.min(count, at + batch);
        List<Future<Optional<String>>> running = new ArrayList<>();
        for (long n = at; n < end; n++) {
          long number = n;
          running.add(threads.submit(() -> attempt(number, trial)));
        }
        for (int i = 0; i < running.size(); i++) {
          Optional<String> fault = outcome(running.get(i));
          if (fault.isPresent()) {
            record(at + i, fault.get());
          }
        }
        at = end;
        write(at);
        if (at == count || System.nanoTime() - told > TimeUnit.SECONDS.toNanos(10)) {
          told = System.nanoTime();
          tell(at, count, (at - first) / ((told - begun) / 1e9));
        }
      }
    } finally {
      threads.shutdownNow();
    }
    if (faults() > 0) {
      throw new AssertionError(faults() + " faults, kept in " + faultsFile());
    }
    return Math.max(0, count - first);
  }

  /** Runs one case again. */
  public void repeat(long number, Trial trial) throws Exception {
    trial.run(number, random(number));
  }

  private SplittableRandom random(long number) {
    return new SplittableRandom(seed * 0x9E37_79B9_7F4A_7C15L + number);
  }

  private Optional<String> attempt(long number, Trial trial) {
    long before = processorTime();
    try {
      trial.run(number, random(number));
    } catch (Throwable fault) {
      StringWriter text = new StringWriter();
      fault.printStackTrace(new PrintWriter(text, true));
      return Optional.of(text.toString().lines().limit(12).reduce("", (a, b) -> a + b + "\n"));
    }
    Duration took = Duration.ofNanos(processorTime() - before);
    return took.compareTo(patience) > 0
        ? Optional.of("took " + took.toMillis() + " ms of processor time\n")
        : Optional.empty();
  }

  private static long processorTime() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private Optional<String> outcome(Future<Optional<String>> running) throws InterruptedException {
    try {
      return running.get(ROUNDS * patience.toMillis(), TimeUnit.MILLISECONDS);
    } catch (TimeoutException e) {
      return Optional.of("did not end\n");
    } catch (ExecutionException e) {
      throw new IllegalStateException(e);
    }
  }

  private void tell(long done, long count, double rate) {
    System.out.printf(
        Locale.ROOT,
        "%s, seed %d: %,d of %,d, %,.1f a second, %d faults%n",
        name,
        seed,
        done,
        count,
        rate,
        faults());
  }

  private Path state() {
    return folder.resolve(name + "-" + seed + ".next");
  }

  private Path faultsFile() {
    return folder.resolve(name + "-" + seed + ".faults");
  }

  private long next() throws IOException {
    return Files.exists(state()) ? Long.parseLong(Files.readString(state()).strip()) : 0;
  }

  private void write(long next) throws IOException {
    Path part = folder.resolve(name + "-" + seed + ".part");
    Files.writeString(part, next + "\n");
    Files.move(part, state(), StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
  }

  private void record(long number, String fault) throws IOException {
    Files.writeString(
        faultsFile(),
        "case " + number + ": " + fault + "\n",
        StandardCharsets.UTF_8,
        StandardOpenOption.CREATE,
        StandardOpenOption.APPEND);
  }

  private long faults() {
    try {
      return Files.exists(faultsFile())
          ? Files.readString(faultsFile()).lines().filter(l -> l.startsWith("case ")).count()
          : 0;
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
