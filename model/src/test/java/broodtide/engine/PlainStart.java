package broodtide.engine;

import broodtide.control.Plan;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Section 6 of SCIENCE.md in other code than the engine's: a colony with a trace of mites lives
 * through three years of the climate; size and infestation set what a run starts from.
 */
final class PlainStart {
  private static final int YEARS = 3;

  private PlainStart() {}

  /** The standard year's colony on a day. */
  static PlainColony standard(ColonyModel model, LocalDate day) {
    PlainColony colony = founding(model);
    LocalDate from = day.minusYears(YEARS);
    int days = Math.toIntExact(day.toEpochDay() - from.toEpochDay());
    PlainCalendar calendar =
        new PlainCalendar(
            new Scenario(model, Plan.waiting("standard"), from, days), Member.average(0));
    for (int t = 0; t < days; t++) {
      colony.run(calendar.on(from.plusDays(t)));
    }
    return colony;
  }

  /** Turns the standard year's colony into one of a size and an infestation. */
  static void scale(PlainColony colony, double size, double infestation) {
    double onBees = size * colony.adults() * infestation / 100;
    double more = onBees / colony.onBees;
    colony.sound.keep(size);
    colony.harmed.keep(size);
    colony.worker.keep(size);
    colony.drone.keep(size);
    colony.worker.mothers = multiplied(colony.worker, more / size);
    colony.drone.mothers = multiplied(colony.drone, more / size);
    colony.onBees = onBees;
    colony.daughters = 0;
    colony.diedInCells = 0;
    colony.diedOnBees = 0;
  }

  private static Deque<Double> multiplied(PlainColony.Brood brood, double factor) {
    Deque<Double> out = new ArrayDeque<>();
    brood.mothers.forEach(x -> out.addLast(x * factor));
    return out;
  }

  /** 12,000 bees, half of them winter bees, no brood, a trace of mites. */
  private static PlainColony founding(ColonyModel model) {
    PlainColony p = new PlainColony(model.bees(), model.mites());
    p.sound.hive = 6_000;
    p.sound.winter = 6_000;
    p.onBees = 1e-30;
    for (int i = 0; i < 14; i++) {
      if (i < 9) {
        p.worker.open.add(0.0);
      }
      if (i < 10) {
        p.drone.open.add(0.0);
      }
      if (i < 12) {
        p.worker.capped.add(0.0);
        p.worker.mothers.add(0.0);
      }
      p.drone.capped.add(0.0);
      p.drone.mothers.add(0.0);
    }
    return p;
  }
}
