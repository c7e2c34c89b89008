package broodtide.classroom;

import broodtide.assessment.SeasonShares;
import broodtide.assessment.YearStages;
import broodtide.engine.DailyEngine;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.engine.Survival;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One colony's season as it is shown: it ends on the day from which the colony is more likely dead
 * than alive, had it been alive on the first day, or with the last day that is believed of its
 * climate.
 */
final class Season {
  private final LocalDate start;
  private final int days;
  private final int believedDays;
  private final int shown;
  private final Survival survival;
  private final Map<Quantity, double[]> series = new EnumMap<>(Quantity.class);

  private Season(Scenario scenario, StandardColony from, SimulatedColony member) {
    start = scenario.start();
    days = scenario.days();
    for (Quantity q : Quantity.values()) {
      series.put(q, new double[days + 1]);
    }
    DailyEngine.of(scenario, from, List.of(member))
        .run((day, view) -> series.forEach((q, values) -> values[day] = q.of(view, 0)));
    survival = Survival.in(scenario.model());
    LocalDate believed =
        new YearStages(scenario.model().climate()).believedUntil(start, start.plusDays(days));
    believedDays = Math.toIntExact(believed.toEpochDay() - start.toEpochDay()) + 1;
    shown = Math.min(believedDays, living(series(Quantity.ADULTS)));
  }

  /** Plays one colony. */
  static Season play(Scenario scenario, StandardColony from, SimulatedColony member) {
    return new Season(scenario, from, member);
  }

  private int living(double[] adults) {
    double least = adults[0];
    for (int day = 1; day < adults.length; day++) {
      least = Math.min(least, adults[day]);
      if (survival.alive(adults[0], least, start, start.plusDays(day)) < 0.5) {
        return day;
      }
    }
    return adults.length;
  }

  /** The first day. */
  LocalDate start() {
    return start;
  }

  /** The last day that is shown. */
  LocalDate lastShown() {
    return start.plusDays(shown - 1L);
  }

  /** The last day that was played, whether the colony lived to see it or not. */
  LocalDate end() {
    return start.plusDays(days);
  }

  /** The day from which the colony is more likely lost than not, if there is one. */
  Optional<LocalDate> lost() {
    return shown < believedDays ? Optional.of(start.plusDays(shown)) : Optional.empty();
  }

  /** Whether the colony lives on a day of the season. */
  boolean livesOn(LocalDate day) {
    long i = day.toEpochDay() - start.toEpochDay();
    return i >= 0 && i < shown;
  }

  /** A quantity day by day while it is shown. */
  double[] of(Quantity quantity) {
    return Arrays.copyOf(series(quantity), shown);
  }

  /**
   * A quantity on a day; empty once the colony is lost, and where nothing is shown.
   *
   * @throws IllegalArgumentException when the day is not of this season
   */
  Optional<Double> at(Quantity quantity, LocalDate day) {
    long i = day.toEpochDay() - start.toEpochDay();
    if (i < 0 || i > days) {
      throw new IllegalArgumentException(day + " lies outside " + start + " to " + end());
    }
    return i < shown ? Optional.of(series(quantity)[Math.toIntExact(i)]) : Optional.empty();
  }

  /**
   * Winter loss, as everywhere in the program: the chance that it is dead or too weak by a day in
   * spring, from any cause.
   *
   * @param low a day of this season
   */
  double winterLoss(LocalDate low) {
    double[] adults = series(Quantity.ADULTS);
    double least = adults[0];
    for (int day = 0; day <= low.toEpochDay() - start.toEpochDay(); day++) {
      least = Math.min(least, adults[day]);
    }
    return 1 - survival.alive(adults[0], least, start, low);
  }

  /** Mean share of capped worker cells with a mite between two days, while there is brood. */
  double infestedBrood(LocalDate from, LocalDate to) {
    double sum = 0;
    int days = 0;
    for (LocalDate d = from; !d.isAfter(to); d = d.plusDays(1)) {
      double share =
          series(Quantity.INFESTED_WORKER_SHARE)[
              Math.toIntExact(d.toEpochDay() - start.toEpochDay())];
      sum += share;
      days += share > 0 ? 1 : 0;
    }
    return sum / Math.max(1, days);
  }

  /** Where its mites are and how strong it is, while it lives; two days at the least. */
  SeasonShares inside() {
    return SeasonShares.of(start, q -> Arrays.copyOf(series(q), Math.max(2, shown)));
  }

  private double[] series(Quantity quantity) {
    double[] values = series.get(quantity);
    if (values == null) {
      throw new IllegalStateException(quantity + " was not kept");
    }
    return values;
  }
}
