package broodtide.bench;

import broodtide.decision.Windows;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** The search for the best day: 30 days, 6 controls, 512 colonies; the sample is made before. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class WindowBench {
  /** Threads that run blocks. */
  @Param({"1", "2"})
  public int threads;

  private Workers workers = new Workers(1);
  private SeasonPosterior sample = BenchCase.sample(workers);

  /** Starts the threads and makes the sample. */
  @Setup
  public void hire() {
    workers.close();
    workers = new Workers(threads);
    sample = BenchCase.sample(workers);
  }

  /** Ends them. */
  @TearDown
  public void dismiss() {
    workers.close();
  }

  /** Milliseconds for one search. */
  @Benchmark
  public Windows search() {
    return BenchCase.windows(sample, workers);
  }
}
