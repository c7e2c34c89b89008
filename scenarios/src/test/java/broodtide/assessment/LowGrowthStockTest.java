package broodtide.assessment;

import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.DailyEngine;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.SpringLow;
import broodtide.engine.Survival;
import broodtide.engine.Trajectory;
import broodtide.mite.StockTraits;
import broodtide.pages.Check;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Bees bred for low and for high growth of mites: over the summer mites rose 1.7-fold in the one
 * and 9.6-fold in the other (Ontario, Insects 11:864, 2020, PMC7761820). The days of the two counts
 * were not seen; tried are three starts and the end of August.
 */
@Tag("outside")
class LowGrowthStockTest {
  private static final LocalDate END = LocalDate.of(2018, 8, 31);

  private static final String SOURCE =
      "De la Mora et al. 2020 (author from memory), Insects" + " 11:864, PMC7761820, Ontario";

  /**
   * The stock bred for low growth falls among the strongly resistant, which cut 0.5 to 0.8 of the
   * daughters; the other lies between average and hygienic, 0 to 0.4. Both names by choice. Winter
   * losses are a check of order: one mite per 100 in mid-May and oxalic acid in November by choice.
   */
  static Stream<Check> checks() {
    List<Check> checks = new ArrayList<>();
    for (String start : List.of("2018-05-01", "2018-05-15", "2018-06-01")) {
      checks.add(hygiene(1.7, start, "strongly resistant, 0.5 to 0.8", 0.5, 0.8));
      checks.add(hygiene(9.6, start, "average to hygienic, 0 to 0.4", 0, 0.4));
    }
    LocalDate may = LocalDate.of(2018, 5, 15);
    checks.add(
        Check.within(
            "winter loss of the stock with 9.6-fold rise less that with 1.7-fold, cold-continental",
            "0.26 less 0.14; held to the order alone",
            0.03,
            Double.POSITIVE_INFINITY,
            SOURCE,
            () -> lossOf(hygieneFor(9.6, may), may) - lossOf(hygieneFor(1.7, may), may)));
    return checks.stream();
  }

  private static Check hygiene(
      double rise, String start, String published, double low, double high) {
    return Check.within(
        "hygiene that gives a "
            + rise
            + "-fold rise of mites from "
            + start.substring(5)
            + " to the end of August, cold-continental",
        published,
        low,
        high,
        SOURCE + "; names of stock by choice",
        () -> hygieneFor(rise, LocalDate.parse(start)));
  }

  @ParameterizedTest
  @MethodSource("checks")
  void published(Check check) {
    check.verify();
  }

  private static double lossOf(double hygiene, LocalDate start) {
    ColonyModel model = Shipped.model("cold-continental").with(new StockTraits(hygiene, 1));
    SpringLow spring = SpringLow.after(model, END);
    MiticideCourse oxalic = Shipped.course("oxalic-dribble", LocalDate.of(2018, 11, 15));
    Trajectory t =
        DailyEngine.run(
            Scenario.until(model, new Plan("winter", List.of(oxalic)), start, spring.day()),
            SimulatedColony.average(1));
    double adults = t.at(Quantity.ADULTS, spring.day());
    return 1 - Survival.in(model).alive(t.at(Quantity.ADULTS, END), adults, END, spring.day());
  }

  private static double hygieneFor(double rise, LocalDate start) {
    return new BrentSolver(1e-6).solve(100, x -> Math.log(rise(x, start) / rise), 0, 0.9);
  }

  private static double rise(double hygiene, LocalDate start) {
    int days = Math.toIntExact(END.toEpochDay() - start.toEpochDay());
    Trajectory t =
        Untreated.from(
            Shipped.model("cold-continental").with(new StockTraits(hygiene, 1)),
            start,
            days,
            Untreated.FEW);
    return t.at(Quantity.MITES, END) / t.at(Quantity.MITES, start);
  }
}
