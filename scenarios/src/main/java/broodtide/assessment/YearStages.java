package broodtide.assessment;

import broodtide.engine.ColonyModel;
import broodtide.engine.SpringLow;
import broodtide.engine.Survival;
import broodtide.season.Climate;
import broodtide.wash.Stage;
import broodtide.wash.ThresholdSet;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The stages of a beekeeper's year in a climate, and the threshold that holds on a day.
 *
 * @param climate the year of the place
 */
public record YearStages(Climate climate) {
  private static final int YEAR = 366;

  /** Last day on which infestations are believed where no winter kills colonies. */
  private static final MonthDay OCTOBER = MonthDay.of(10, 31);

  private static final MonthDay APRIL = MonthDay.of(4, 30);

  /**
   * With fewer days to go the winter bees count as raised: nothing done now reaches them. Choice.
   */
  private static final int NEARLY = 14;

  /**
   * {@return the stage of a day}
   *
   * @param day the day
   */
  public Stage on(LocalDate day) {
    if (climate.supers().holds(day)) {
      return Stage.HONEY_FLOW;
    }
    if (climate.laying().at(day) <= 0) {
      return Stage.BROODLESS;
    }
    int toSupers = daysTo(day, d -> climate.supers().holds(d));
    int toWinterBees = daysTo(day, d -> climate.winterBees().holds(d));
    int toLeastLaying = daysTo(day, this::leastLaying);
    if (toWinterBees == 0 || (toLeastLaying < toSupers && toLeastLaying <= toWinterBees)) {
      return Stage.WINTER_BEES;
    }
    return toWinterBees < toSupers ? Stage.AFTER_HARVEST : Stage.BUILD_UP;
  }

  /**
   * {@return the treatment threshold on a day, mites per 100 adult bees; empty when the set names
   * none for that day}
   *
   * @param thresholds the set
   * @param day the day
   */
  public Optional<Double> thresholdOn(ThresholdSet thresholds, LocalDate day) {
    return thresholds.perHundred(on(day), day, climate.southern());
  }

  /**
   * {@return the daily fall of mites on a board above which a set advises to act; empty when it
   * names none for that day}
   *
   * @param thresholds the set
   * @param day the day
   */
  public Optional<Double> fallOn(ThresholdSet thresholds, LocalDate day) {
    return thresholds.dailyFall(on(day), day, climate.southern());
  }

  /**
   * A treatment threshold that stays the same from day to day.
   *
   * @param from first day
   * @param to last day
   * @param perHundred mites per 100 adult bees
   */
  public record Step(LocalDate from, LocalDate to, double perHundred) {}

  /**
   * {@return the treatment threshold between two days as steps; days without one are in none}
   *
   * @param thresholds the set
   * @param from the first day that counts
   * @param to the last day that counts
   */
  public List<Step> thresholdSteps(ThresholdSet thresholds, LocalDate from, LocalDate to) {
    List<Step> out = new ArrayList<>();
    for (LocalDate d = from; !d.isAfter(to); d = d.plusDays(1)) {
      Optional<Double> value = thresholdOn(thresholds, d);
      if (value.isPresent()) {
        Step last = out.isEmpty() ? null : out.get(out.size() - 1);
        boolean goesOn =
            last != null && last.to().plusDays(1).equals(d) && last.perHundred() == value.get();
        out.add(new Step(goesOn ? out.remove(out.size() - 1).from() : d, d, value.get()));
      }
    }
    return out;
  }

  /**
   * {@return the first day, from a day on, that lies in the weeks in which winter bees are raised}
   *
   * @param from the first day that counts
   */
  public LocalDate nextWinterBees(LocalDate from) {
    return from.plusDays(daysTo(from, d -> climate.winterBees().holds(d)));
  }

  /**
   * {@return the last day of the winter-bee weeks that end on or after a day}
   *
   * @param from the first day that counts
   */
  public LocalDate endOfWinterBees(LocalDate from) {
    LocalDate first = nextWinterBees(from);
    return first.plusDays(daysTo(first, d -> !climate.winterBees().holds(d.plusDays(1))));
  }

  /**
   * {@return the last day to look at, no later than is believed} In a place without a winter whose
   * losses can be told nothing in the model kills a colony in autumn, so that after October (April
   * in the south) its infestation is not to be believed and a look ahead ends there. Choice.
   *
   * @param now the decision date; in the two months after that day all is left as it was asked for
   * @param wanted the last day asked for
   */
  public LocalDate believedUntil(LocalDate now, LocalDate wanted) {
    if (Survival.hasWinter(climate)) {
      return wanted;
    }
    LocalDate last = (climate.southern() ? APRIL : OCTOBER).atYear(now.getYear());
    LocalDate next = last.plusMonths(2).isBefore(now) ? last.plusYears(1) : last;
    return next.isAfter(now) && wanted.isAfter(next) ? next : wanted;
  }

  /**
   * {@return the day by which the winter bees have been raised of the winter that a decision is
   * judged by: the coming one, or the next when its bees are as good as raised}
   *
   * @param now the day of the decision
   */
  public LocalDate winterBeesRaised(LocalDate now) {
    return endOfWinterBees(decidesFrom(now));
  }

  /**
   * {@return the first day from which the {@link #winterBeesRaised winter bees} are counted}
   *
   * @param now the day of the decision
   */
  LocalDate decidesFrom(LocalDate now) {
    return endOfWinterBees(now).isBefore(now.plusDays(NEARLY)) ? now.plusDays(NEARLY) : now;
  }

  /**
   * {@return the low by which the winter is judged that a decision of a day looks to}
   *
   * @param model the place and the bees; its climate is this one
   * @param now the day of the decision
   */
  public SpringLow springLow(ColonyModel model, LocalDate now) {
    return SpringLow.after(model, raisedAlready(now) ? now : winterBeesRaised(now));
  }

  /**
   * {@return whether the bees of the coming winter are raised, or as good as raised, so that this
   * winter is judged though nothing done now reaches its bees}
   *
   * @param now the day of the decision
   */
  public boolean raisedAlready(LocalDate now) {
    return closedUp(now) || !decidesFrom(now).equals(now);
  }

  /**
   * {@return whether the winter bees of the coming winter have been raised and spring has not
   * begun}
   *
   * @param day the day
   */
  public boolean closedUp(LocalDate day) {
    Stage stage = on(day);
    return (stage == Stage.WINTER_BEES || stage == Stage.BROODLESS)
        && !climate.winterBees().holds(day)
        && daysTo(day, this::leastLaying) < daysTo(day, d -> climate.winterBees().holds(d));
  }

  /**
   * {@return the first day after supers come off, from a day on; today when they are off already}
   *
   * @param from the first day that counts
   */
  public LocalDate afterHarvest(LocalDate from) {
    LocalDate d = from;
    if (on(from) == Stage.BUILD_UP) {
      d = from.plusDays(daysTo(from, x -> climate.supers().holds(x)));
    }
    return d.plusDays(daysTo(d, x -> !climate.supers().holds(x)));
  }

  /**
   * {@return the first day from a day on with no brood left, when the year has such a day}
   *
   * @param from the first day that counts
   */
  public Optional<LocalDate> broodless(LocalDate from) {
    int untilLastDrone = 24;
    int idle = 0;
    for (int i = -untilLastDrone; i < YEAR; i++) {
      LocalDate d = from.plusDays(i);
      idle = climate.laying().at(d) <= 0 ? idle + 1 : 0;
      if (idle > untilLastDrone && i >= 0) {
        return Optional.of(d);
      }
    }
    return Optional.empty();
  }

  /**
   * {@return the stretches of one stage between two days}
   *
   * @param stage the part of the year
   * @param from the first day that counts
   * @param to the last day that counts
   */
  public List<LocalDate[]> stretches(Stage stage, LocalDate from, LocalDate to) {
    return stretches(d -> on(d) == stage, from, to);
  }

  /**
   * {@return the stretches with supers on between two days}
   *
   * @param from the first day that counts
   * @param to the last day that counts
   */
  public List<LocalDate[]> supers(LocalDate from, LocalDate to) {
    return stretches(d -> climate.supers().holds(d), from, to);
  }

  /**
   * {@return the stretches in which winter bees are raised between two days}
   *
   * @param from the first day that counts
   * @param to the last day that counts
   */
  public List<LocalDate[]> winterBees(LocalDate from, LocalDate to) {
    return stretches(d -> climate.winterBees().holds(d), from, to);
  }

  /** Days on which something holds. */
  @FunctionalInterface
  private interface Days {
    boolean holds(LocalDate day);
  }

  private static List<LocalDate[]> stretches(Days days, LocalDate from, LocalDate to) {
    List<LocalDate[]> out = new ArrayList<>();
    for (LocalDate d = from; !d.isAfter(to); d = d.plusDays(1)) {
      if (days.holds(d)) {
        LocalDate first = d;
        while (!d.plusDays(1).isAfter(to) && days.holds(d.plusDays(1))) {
          d = d.plusDays(1);
        }
        out.add(new LocalDate[] {first, d});
      }
    }
    return out;
  }

  private static int daysTo(LocalDate from, Days days) {
    for (int i = 0; i < YEAR; i++) {
      if (days.holds(from.plusDays(i))) {
        return i;
      }
    }
    return YEAR;
  }

  /** Whether the laying potential is at its lowest of the year, to within a day or so. */
  private boolean leastLaying(LocalDate day) {
    double near = 0.005 * climate.laying().peak();
    return climate.laying().at(day) <= climate.laying().lowest() + near;
  }
}
