package broodtide.classroom;

import broodtide.engine.ColonyModel;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Plays seasons. Where a colony starts takes three simulated years to find and is the same for all
 * who start there, so the last few places are remembered.
 */
final class SeasonPlayer {
  private static final int REMEMBERED = 24;

  private record ClimateYear(ColonyModel model, LocalDate day) {}

  private final Map<ClimateYear, StandardColony> starts =
      new LinkedHashMap<>(32, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<ClimateYear, StandardColony> eldest) {
          return size() > REMEMBERED;
        }
      };

  /** Plays one colony through a scenario. */
  Season play(Scenario scenario, SimulatedColony member) {
    return Season.play(scenario, start(scenario), member);
  }

  private StandardColony start(Scenario scenario) {
    ClimateYear place = new ClimateYear(scenario.model(), scenario.start());
    synchronized (starts) {
      return starts.computeIfAbsent(place, p -> StandardColony.on(p.model(), p.day()));
    }
  }

  /** How many places are remembered. */
  int remembered() {
    synchronized (starts) {
      return starts.size();
    }
  }
}
