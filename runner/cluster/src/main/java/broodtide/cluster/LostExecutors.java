package broodtide.cluster;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.apache.spark.scheduler.SparkListener;
import org.apache.spark.scheduler.SparkListenerExecutorRemoved;

/** Counts executors that ended while the job ran, of which the engine's last words tell little. */
final class LostExecutors extends SparkListener {
  /** What an executor's process ends with when its memory runs out. */
  private static final String MEMORY_CODE = "code 52";

  private final AtomicInteger all = new AtomicInteger();
  private final AtomicInteger ofMemory = new AtomicInteger();
  private volatile boolean over;

  /** The executors that end from now on were stopped. */
  void stopCounting() {
    over = true;
  }

  @Override
  public void onExecutorRemoved(SparkListenerExecutorRemoved removed) {
    if (over) {
      return;
    }
    all.incrementAndGet();
    if (removed.reason().contains(MEMORY_CODE)) {
      ofMemory.incrementAndGet();
    }
  }

  /** What is to be said of them; empty when none was lost. */
  Optional<String> text() {
    if (all.get() == 0) {
      return Optional.empty();
    }
    String lost = "Executors lost: " + all + "; out of memory: " + ofMemory + ".";
    return Optional.of(
        ofMemory.get() == 0
            ? lost
            : lost + " Give each more memory with --executor-memory, or fewer cores.");
  }
}
