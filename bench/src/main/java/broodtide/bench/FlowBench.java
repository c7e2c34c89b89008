package broodtide.bench;

import broodtide.engine.Scenario;
import broodtide.flow.FlowEngine;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A year of the flow engine, one colony, by length of its chains. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class FlowBench {
  /** Stages per brood delay. */
  @Param({"4", "12", "50", "200"})
  public int stages;

  private final Scenario scenario = BenchSeason.scenario();

  /** Milliseconds for one year. */
  @Benchmark
  public FlowEngine.Run year() {
    return FlowEngine.run(scenario, BenchSeason.AVERAGE, stages, FlowEngine.USUAL_TOLERANCE);
  }
}
