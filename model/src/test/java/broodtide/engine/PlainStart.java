package broodtide.engine;

import broodtide.control.Plan;
import broodtide.mite.Immigration;
import java.time.LocalDate;
import java.util.List;

/**
 * Section 6 of SCIENCE.md in other code than the engine's: a colony with a trace of mites lives
 * through three years of the climate, the last sixty days with mites; size and infestation set what
 * a run starts from.
 */
final class PlainStart {
  private static final int YEARS = 3;
  private static final int LEAD = 60;

  private PlainStart() {}

  /** What a run of a member starts from on a day. */
  static PlainColony of(ColonyModel model, SimulatedColony m, LocalDate day) {
    SimulatedColony usual =
        new SimulatedColony(
            1,
            1,
            m.infestation(),
            m.vigour(),
            m.immigration() / m.startSize(),
            m.infectivity(),
            List.of());
    PlainColony standard = founding(model);
    LocalDate leave = day.minusDays(LEAD);
    play(
        standard,
        model.with(Immigration.NONE),
        SimulatedColony.average(0),
        day.minusYears(YEARS),
        leave);
    PlainColony p = sought(standard, model, usual, leave, day);
    p.scale(m.startSize());
    clearLedger(p);
    return p;
  }

  /** Halves brackets: mites at the leave, or those from outside where they alone are too many. */
  static PlainColony sought(
      PlainColony standard, ColonyModel model, SimulatedColony m, LocalDate leave, LocalDate day) {
    boolean outside = led(standard, model, m, leave, day, 0, 1).per100() > m.infestation();
    double low = 0;
    double high = outside ? 1 : 300;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      PlainColony p = outside(standard, model, m, leave, day, middle, outside);
      if (p.per100() < m.infestation()) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return outside(standard, model, m, leave, day, low, outside);
  }

  static PlainColony outside(
      PlainColony standard,
      ColonyModel model,
      SimulatedColony m,
      LocalDate leave,
      LocalDate day,
      double x,
      boolean outside) {
    return led(standard, model, m, leave, day, outside ? 0 : x, outside ? x : 1);
  }

  static PlainColony led(
      PlainColony standard,
      ColonyModel model,
      SimulatedColony m,
      LocalDate leave,
      LocalDate day,
      double per100,
      double arriving) {
    PlainColony p = copy(standard, model, m.infectivity());
    double factor = per100 / standard.per100();
    p.onBees *= factor;
    p.worker.mothers = PlainColony.times(p.worker.mothers, factor);
    p.drone.mothers = PlainColony.times(p.drone.mothers, factor);
    double factorOutside = m.immigration() * arriving;
    play(
        p,
        model,
        new SimulatedColony(1, 1, 0, m.vigour(), factorOutside, m.infectivity(), List.of()),
        leave,
        day);
    return p;
  }

  static PlainColony copy(PlainColony of, ColonyModel model, double infectivity) {
    PlainColony p = new PlainColony(model, infectivity);
    p.sound.add(of.sound);
    p.overt.add(of.overt);
    p.carrier.add(of.carrier);
    p.onBees = of.onBees;
    p.worker.add(of.worker);
    p.drone.add(of.drone);
    return p;
  }

  static void play(
      PlainColony p, ColonyModel model, SimulatedColony member, LocalDate from, LocalDate to) {
    int days = Math.toIntExact(to.toEpochDay() - from.toEpochDay());
    Scenario scenario = new Scenario(model, Plan.waiting("standard"), from, days);
    PlainCalendar calendar = new PlainCalendar(scenario, member);
    for (int t = 0; t < days; t++) {
      p.run(calendar.on(from.plusDays(t)));
    }
  }

  static void clearLedger(PlainColony p) {
    p.daughters = 0;
    p.diedInCells = 0;
    p.diedOnBees = 0;
    p.immigrants = 0;
  }

  /** 12,000 bees, half of them winter bees, no brood, a trace of mites. */
  static PlainColony founding(ColonyModel model) {
    PlainColony p = new PlainColony(model, 0.8);
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
