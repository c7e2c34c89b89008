package broodtide.bench;

import broodtide.engine.DailyEngine;
import broodtide.engine.DayObserver;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A year of the daily engine on one thread, by width of the block; its making is not timed. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 300)
@Measurement(iterations = 300)
@Fork(1)
public class KernelBench {
  /** Colonies in lockstep. */
  @Param({"1", "8", "32", "64", "126", "254"})
  public int width;

  private final Scenario scenario = BenchSeason.scenario();
  private final StandardColony start = StandardColony.on(scenario.model(), scenario.start());
  private List<SimulatedColony> members = List.of();
  private DailyEngine engine = DailyEngine.of(scenario, start, BenchSeason.members(1));

  /** Members of this width. */
  @Setup
  public void members() {
    members = BenchSeason.members(width);
  }

  /** An engine runs once. */
  @Setup(Level.Invocation)
  public void engine() {
    engine = DailyEngine.of(scenario, start, members);
  }

  /** Microseconds for {@code width} times 365 colony-days. */
  @Benchmark
  public void year() {
    engine.run(DayObserver.NONE);
  }
}
