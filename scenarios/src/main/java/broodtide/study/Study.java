package broodtide.study;

import broodtide.catalog.Assumptions;
import broodtide.catalog.Referred;
import broodtide.catalog.Surroundings;
import broodtide.colony.BeeRates;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.forms.Source;
import broodtide.mite.Immigration;
import broodtide.mite.MiteRates;
import broodtide.mite.StockTraits;
import broodtide.season.Climate;
import broodtide.season.DailyHighs;
import broodtide.wash.ThresholdSet;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * One colony in one place over one stretch of time, and the plans to lay side by side.
 *
 * @param title one line for people
 * @param climate the year, as it runs in the north
 * @param southern whether the place lies south of the equator, where the year is half a year later
 * @param start first day
 * @param until last day
 * @param colony the colony on the first day
 * @param surroundings colonies around, in words
 * @param immigration mites from outside in figures, by the calendar of the place; when not empty
 *     these hold and {@code surroundings} does not
 * @param washes the file of washes, if there is one
 * @param given controls already carried out, which every plan shares
 * @param plans plans to compare, at least one
 * @param thresholds treatment thresholds that washes are held against
 * @param bees rates of the bees that differ from the defaults
 * @param mites rates of the mites that differ from the defaults
 * @param highs daily highs of the place in place of the climate's, by its own calendar
 * @param resistant active substances that did badly at the place
 */
public record Study(
    String title,
    Climate climate,
    boolean southern,
    LocalDate start,
    LocalDate until,
    ColonyStart colony,
    Surroundings surroundings,
    List<Immigration.Window> immigration,
    Optional<Referred<Source>> washes,
    List<Control> given,
    List<Plan> plans,
    Referred<ThresholdSet> thresholds,
    Map<String, Double> bees,
    Map<String, Double> mites,
    DailyHighs highs,
    List<String> resistant) {
  /** Copies the lists and the maps. */
  public Study {
    immigration = List.copyOf(immigration);
    given = List.copyOf(given);
    plans = List.copyOf(plans);
    bees = Map.copyOf(bees);
    mites = Map.copyOf(mites);
    resistant = List.copyOf(resistant);
  }

  /** {@return the rates of the colony and its mites} */
  public ColonyModel model() {
    Immigration arrivals;
    if (immigration.isEmpty()) {
      Immigration usual = surroundings.immigration(Assumptions.usual());
      arrivals = southern ? usual.inSouth() : usual;
    } else {
      arrivals = new Immigration(immigration);
    }
    return new ColonyModel(
        (southern ? climate.inSouth() : climate).with(highs),
        BeeRates.with(bees),
        MiteRates.with(mites),
        new StockTraits(colony.stock().hygiene(), 1),
        arrivals);
  }

  /**
   * {@return the colony, with the infestation that the study gives}
   *
   * @throws IllegalStateException when the study leaves the infestation to the washes
   */
  public SimulatedColony member() {
    return member(
        colony
            .infestation()
            .orElseThrow(
                () ->
                    new IllegalStateException(
                        "the study \"" + title + "\" leaves the infestation to its washes")));
  }

  /**
   * {@return the colony with a given infestation}
   *
   * @param infestation mites per 100 adult bees on the first day
   */
  public SimulatedColony member(double infestation) {
    SimulatedColony usual =
        new SimulatedColony(
            colony.strength(), 1, infestation, colony.stock().vigour(), 1, List.of());
    OptionalDouble wanted = colony.bees(Assumptions.usual());
    return wanted.isEmpty()
        ? usual
        : usual.sized(StandardColony.on(model(), start).sizeFor(wanted.getAsDouble(), usual));
  }

  /**
   * {@return one scenario per plan, in their order; each begins with the controls already carried
   * out}
   */
  public List<Scenario> scenarios() {
    ColonyModel model = model();
    return plans.stream()
        .map(plan -> Scenario.until(model, withGiven(plan), start, until))
        .toList();
  }

  /**
   * {@return a plan together with the controls already carried out, which come first}
   *
   * @param plan what may be done from the day of decision on
   */
  public Plan withGiven(Plan plan) {
    return new Plan(plan.name(), Stream.concat(given.stream(), plan.controls().stream()).toList());
  }
}
