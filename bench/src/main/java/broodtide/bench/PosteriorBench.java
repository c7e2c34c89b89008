package broodtide.bench;

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

/** The season's posterior from four monthly washes. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 6, time = 2)
@Fork(1)
public class PosteriorBench {
  /** Colonies in the sample. */
  @Param({"4096"})
  public int particles;

  /** Threads that run blocks. */
  @Param({"1", "2"})
  public int threads;

  private Workers workers = new Workers(1);

  /** Starts the threads. */
  @Setup
  public void hire() {
    workers.close();
    workers = new Workers(threads);
  }

  /** Ends them. */
  @TearDown
  public void dismiss() {
    workers.close();
  }

  /** Milliseconds for one posterior. */
  @Benchmark
  public SeasonPosterior posterior() {
    return BenchCase.posterior(particles, workers);
  }
}
