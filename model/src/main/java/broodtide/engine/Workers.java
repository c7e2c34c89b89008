package broodtide.engine;

import broodtide.measure.OutOfRange;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;

/**
 * Threads that share out numbered parts of work. Every part writes to a place of its own, so
 * results are the same bytes on any number of threads.
 */
public final class Workers implements AutoCloseable {
  private static final int MOST = 1024;

  private final int threads;
  private final ExecutorService pool;

  /**
   * A number of threads.
   *
   * @param threads 1 to 1,024
   */
  public Workers(int threads) {
    OutOfRange.check("threads", threads, 1, MOST, "threads");
    this.threads = threads;
    pool =
        Executors.newFixedThreadPool(
            threads,
            work -> {
              Thread t = new Thread(work, "broodtide-worker");
              t.setDaemon(true);
              return t;
            });
  }

  /** {@return as many threads as the machine has cores} */
  public static Workers all() {
    return new Workers(Math.min(MOST, Runtime.getRuntime().availableProcessors()));
  }

  /** {@return how many threads work} */
  public int threads() {
    return threads;
  }

  /**
   * Does every part once and returns when all are done.
   *
   * @param parts number of parts
   * @param part does the part of a number, 0 to {@code parts - 1}
   * @param progress is told of every part done
   * @throws CancellationException when the calling thread is interrupted; parts under way end first
   */
  public void run(int parts, IntConsumer part, Progress progress) {
    AtomicInteger next = new AtomicInteger();
    AtomicInteger done = new AtomicInteger();
    Runnable work =
        () -> {
          for (int i = next.getAndIncrement(); i < parts; i = next.getAndIncrement()) {
            try {
              part.accept(i);
            } catch (RuntimeException | Error e) {
              next.set(parts);
              throw e;
            }
            progress.at(done.incrementAndGet(), parts);
          }
        };
    List<Future<?>> running = new ArrayList<>();
    for (int t = 0; t < Math.min(threads, parts); t++) {
      running.add(pool.submit(work));
    }
    boolean interrupted = false;
    RuntimeException failure = null;
    for (Future<?> f : running) {
      boolean over = false;
      while (!over) {
        try {
          f.get();
          over = true;
        } catch (InterruptedException e) {
          next.set(parts);
          interrupted = true;
        } catch (ExecutionException e) {
          over = true;
          failure =
              e.getCause() instanceof RuntimeException r
                  ? r
                  : new IllegalStateException(e.getCause());
        }
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
      throw new CancellationException(
          "interrupted after " + done.get() + " of " + parts + " parts");
    }
    if (failure != null) {
      throw failure;
    }
  }

  @Override
  public void close() {
    pool.shutdown();
  }
}
