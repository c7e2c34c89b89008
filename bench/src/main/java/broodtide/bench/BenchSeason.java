package broodtide.bench;

import broodtide.catalog.Catalog;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.PlainFlow;
import broodtide.engine.Scenario;
import broodtide.engine.SeasonText;
import broodtide.engine.SimulatedColony;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** The season that every measurement runs: a year in the temperate climate, nothing done. */
public final class BenchSeason {
  static final LocalDate START = LocalDate.of(2026, 3, 1);
  static final int DAYS = 365;
  private static final int EXPORTED = 512;

  /** The colony of the flow engine, with 0.1 mites per 100 bees in March. */
  static final SimulatedColony AVERAGE = SimulatedColony.average(0.1);

  private BenchSeason() {}

  static Scenario scenario() {
    return scenario(DAYS);
  }

  static Scenario scenario(int days) {
    return new Scenario(
        ColonyModel.in(Catalog.climate("temperate")), Plan.waiting("nothing done"), START, days);
  }

  static List<SimulatedColony> members(int count) {
    SplittableRandom random = new SplittableRandom(20260301);
    List<SimulatedColony> members = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      members.add(
          new SimulatedColony(
              random.nextDouble(0.7, 1.3),
              random.nextDouble(0.6, 1.4),
              random.nextDouble(0.02, 0.3),
              random.nextDouble(0.7, 1.3),
              1,
              List.of()));
    }
    return members;
  }

  /** Writes the season to the file of the first argument, with flows of the others' stages. */
  public static void main(String[] args) throws IOException {
    StringBuilder text = new StringBuilder(SeasonText.of(scenario(), AVERAGE, members(EXPORTED)));
    for (int i = 1; i < args.length; i++) {
      PlainFlow.Run tight = FlowClock.tight(Integer.parseInt(args[i]));
      text.append("flow ").append(args[i]).append(' ').append(2 * (DAYS + 1));
      for (int day = 0; day <= DAYS; day++) {
        text.append(' ').append(tight.adults()[day]).append(' ').append(tight.mites()[day]);
      }
      text.append('\n');
    }
    Files.writeString(Path.of(args[0]), text);
  }
}
