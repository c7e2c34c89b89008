package broodtide.bench;

import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.fit.SeasonPosterior;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;
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
  private static final long SEED = 11;

  /** Colonies in the sample. */
  @Param({"4096"})
  public int particles;

  /** Threads that run blocks. */
  @Param({"1", "2"})
  public int threads;

  private Workers workers = new Workers(1);

  /** Invented washes. */
  static List<Wash> washes() {
    return List.of(
        Wash.of(LocalDate.of(2026, 5, 15), "A", 2, 310),
        Wash.of(LocalDate.of(2026, 6, 14), "A", 3, 295),
        Wash.of(LocalDate.of(2026, 7, 16), "A", 8, 320),
        Wash.of(LocalDate.of(2026, 8, 15), "A", 15, 305));
  }

  static SeasonPosterior infer(int particles, Workers workers) {
    return SeasonPosterior.of(
        BenchSeason.scenario(200),
        washes(),
        Priors.defaults(),
        new SeasonPosterior.Effort(particles, SeasonPosterior.Effort.usual(SEED).moves(), SEED),
        workers,
        Progress.NONE);
  }

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
    return infer(particles, workers);
  }
}
