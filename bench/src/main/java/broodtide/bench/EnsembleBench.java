package broodtide.bench;

import broodtide.engine.DayObserver;
import broodtide.engine.Ensemble;
import broodtide.engine.Progress;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.engine.Workers;
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

/** A year of 4,096 colonies, blocks shared out over threads. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 8, time = 1)
@Fork(1)
public class EnsembleBench {
  private static final int COLONIES = 4096;

  /** Threads that run blocks. */
  @Param({"1", "2"})
  public int threads;

  private final Scenario scenario = BenchSeason.scenario();
  private final StandardColony start = StandardColony.on(scenario.model(), scenario.start());
  private final List<SimulatedColony> members = BenchSeason.members(COLONIES);
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

  /** Milliseconds for 4,096 years. */
  @Benchmark
  public void years() {
    Ensemble.run(
        scenario, start, members, (first, count) -> DayObserver.NONE, workers, Progress.NONE);
  }
}
