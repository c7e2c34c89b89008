package broodtide.flow;

import broodtide.colony.BeeRates;
import broodtide.control.DroneCombRemoval;
import broodtide.control.HazardSpread;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.control.QueenCaging;
import broodtide.control.Requeening;
import broodtide.control.Split;
import broodtide.control.WarmthResponse;
import broodtide.engine.ColonyModel;
import broodtide.engine.Places;
import broodtide.engine.Scenario;
import broodtide.engine.SeasonChange;
import broodtide.engine.SimulatedColony;
import broodtide.measure.Measure;
import broodtide.measure.Measures;
import broodtide.mite.Immigration;
import broodtide.mite.MiteRates;
import broodtide.mite.StockTraits;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * A season in which everything is done within some weeks, for one colony with a luck of its own.
 */
final class FlowSeason {
  static final LocalDate START = LocalDate.of(2026, 4, 20);
  static final int DAYS = 75;

  private FlowSeason() {}

  static SimulatedColony member() {
    return new SimulatedColony(1.2, 0.9, 2, 1.3, 1.7, 0.6, List.of(0.7))
        .changing(
            List.of(
                new SeasonChange(START.minusDays(4), 0.9, 1.2),
                new SeasonChange(START.plusDays(16), 1.4, 0.5),
                new SeasonChange(START.plusDays(52), 0.6, 2)));
  }

  static Scenario scenario(ColonyModel model) {
    LocalDate comb = START.plusDays(3);
    return new Scenario(
        model,
        new Plan(
            "all",
            List.of(
                new DroneCombRemoval(
                    "comb", comb, List.of(comb.plusDays(20), comb.plusDays(35)), 0.8, 0.4),
                new Split("split", START.plusDays(12), 0.3, 0.2, 5),
                new MiticideCourse("strips", miticide(9, 0.3, 0.1), START.plusDays(6), 2, 14),
                new MiticideCourse("vapour", miticide(3, 0.5, 0), START.plusDays(22), 1, 30),
                new QueenCaging("cage", START.plusDays(44), START.plusDays(50)),
                new Requeening("queen", START.plusDays(26), new StockTraits(0.3, 0.8), 4))),
        START,
        DAYS);
  }

  private static Miticide miticide(int days, double onBees, double inCells) {
    return new Miticide(
        "invented",
        days,
        onBees,
        inCells,
        0.004,
        0.1,
        0,
        40,
        Miticide.SupersRule.OFF,
        new WarmthResponse(2, 12, 30),
        HazardSpread.USUAL);
  }

  /** Usual rates, with mites that arrive during some weeks. */
  static ColonyModel usual() {
    return ColonyModel.in(Places.seasonal())
        .with(
            new Immigration(
                List.of(
                    new Immigration.Window(
                        new YearSpan(MonthDay.of(4, 28), MonthDay.of(6, 10)), 3))));
  }

  /** Rates anywhere in the lower half of their range. */
  static ColonyModel drawn(int seed, double clumping) {
    SplittableRandom random = new SplittableRandom(seed);
    Map<String, Double> mites = rates(MiteRates.class, random);
    mites.put("clumping", clumping);
    return usual()
        .with(BeeRates.with(rates(BeeRates.class, random)))
        .with(MiteRates.with(mites))
        .with(new StockTraits(0.2, 1.1));
  }

  private static Map<String, Double> rates(Class<? extends Record> type, SplittableRandom random) {
    Map<String, Double> values = new HashMap<>();
    for (Measures.Line line : Measures.table(type)) {
      Measure m = line.measure();
      values.put(line.name(), random.nextDouble(m.min(), (m.min() + m.max()) / 2));
    }
    return values;
  }
}
