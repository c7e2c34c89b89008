package broodtide.control;

import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;

/**
 * Drone comb given to the colony and cut out with its brood, once or several times.
 *
 * @param name what people call it
 * @param inserted first day on which the comb is in the hive
 * @param cuts days on which the drone brood is cut out, rising, at least one, none before the comb
 *     goes in
 * @param taken share of the drone brood that each cut takes, 0 to 1
 * @param droneShare share of eggs laid in drone cells while the comb is in, at the height of the
 *     drone season, 0 to 0.5; towards either end of the season it fades with the season's own
 *     share, and where that is larger, it holds
 */
public record DroneCombRemoval(
    String name, LocalDate inserted, List<LocalDate> cuts, double taken, double droneShare)
    implements Control {
  /** Checks ranges and the order of the dates. */
  public DroneCombRemoval {
    cuts = List.copyOf(cuts);
    OutOfRange.check("taken", taken, 0, 1, "1");
    OutOfRange.check("droneShare", droneShare, 0, 0.5, "1");
    if (cuts.isEmpty()) {
      throw new OutOfRange("cuts", "empty", "at least one date");
    }
    LocalDate last = inserted;
    for (LocalDate cut : cuts) {
      if (!cut.isAfter(last)) {
        throw new OutOfRange("cuts", cut.toString(), "dates that rise and lie after " + last);
      }
      last = cut;
    }
  }

  @Override
  public LocalDate from() {
    return inserted;
  }

  @Override
  public LocalDate to() {
    return cuts.get(cuts.size() - 1);
  }

  /**
   * {@return the same comb with other cuts}
   *
   * @param dates days on which the drone brood is cut out
   */
  public DroneCombRemoval withCuts(List<LocalDate> dates) {
    return new DroneCombRemoval(name, inserted, dates, taken, droneShare);
  }

  @Override
  public DroneCombRemoval named(String called) {
    return new DroneCombRemoval(called, inserted, cuts, taken, droneShare);
  }

  @Override
  public DroneCombRemoval startingOn(LocalDate day) {
    long moved = ChronoUnit.DAYS.between(inserted, day);
    List<LocalDate> dates = cuts.stream().map(cut -> cut.plusDays(moved)).toList();
    return new DroneCombRemoval(name, day, dates, taken, droneShare);
  }

  @Override
  public void act(ControlEffects colony) {
    colony.rearDrones(inserted, to(), droneShare);
    cuts.forEach(cut -> colony.cutDroneBrood(cut, taken));
  }
}
