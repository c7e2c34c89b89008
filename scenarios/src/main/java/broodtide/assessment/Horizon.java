package broodtide.assessment;

import broodtide.engine.ColonyModel;
import java.time.LocalDate;

/** How far ahead to look: says the last day, from the place's year and the decision date. */
@FunctionalInterface
public interface Horizon {
  /**
   * {@return the last day that is looked at}
   *
   * @param stages the year of the place
   * @param now the decision date
   */
  LocalDate of(YearStages stages, LocalDate now);

  /**
   * {@return the day on which the winter bees of the next winter have been raised}
   *
   * @param stages the year of the place
   * @param now the decision date
   */
  static LocalDate winterBees(YearStages stages, LocalDate now) {
    return stages.winterBeesRaised(now);
  }

  /**
   * {@return the day of the next spring on which a colony has the fewest bees and shows whether it
   * came through}
   *
   * @param stages the year of the place
   * @param now the decision date
   */
  static LocalDate spring(YearStages stages, LocalDate now) {
    return stages.springLow(ColonyModel.in(stages.climate()), now).day();
  }

  /**
   * {@return a horizon that is one day, whatever the place and the decision date}
   *
   * @param day the last day that is looked at
   */
  static Horizon on(LocalDate day) {
    return (stages, now) -> day;
  }
}
