package broodtide.compare;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.DailyEngine;
import broodtide.engine.Member;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.Trajectory;
import broodtide.mite.StockTraits;
import java.time.LocalDate;
import java.util.List;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Bees bred for low and for high growth of mites: over the summer mites rose 1.7-fold in the one
 * and 9.6-fold in the other (Ontario, Insects 11:864, 2020, PMC7761820). The days of the two counts
 * were not seen; tried are three starts and the end of August.
 */
@Tag("outside")
class LowGrowthStockTest {
  private static final LocalDate END = LocalDate.of(2018, 8, 31);

  /**
   * The stock bred for low growth falls among the strongly resistant, which cut 0.5 to 0.8 of the
   * daughters; the other lies between average and hygienic, 0 to 0.4. Both names by choice.
   */
  @ParameterizedTest
  @ValueSource(strings = {"2018-05-01", "2018-05-15", "2018-06-01"})
  void traitsThatGiveThePublishedRises(LocalDate start) {
    assertThat(hygieneFor(1.7, start)).isBetween(0.5, 0.8);
    assertThat(hygieneFor(9.6, start)).isBetween(0.0, 0.4);
  }

  /**
   * Winter losses of 14 % of the stock bred for low growth against 26 % of the other: a check of
   * order. One mite per 100 in mid-May and oxalic acid in November by choice.
   */
  @Test
  void lowGrowthStockWintersBetter() {
    LocalDate may = LocalDate.of(2018, 5, 15);
    double low = lossOf(hygieneFor(1.7, may), may);
    double high = lossOf(hygieneFor(9.6, may), may);
    assertThat(low).isLessThan(high - 0.03);
  }

  private static double lossOf(double hygiene, LocalDate start) {
    ColonyModel model = Shipped.model("cold-continental").with(new StockTraits(hygiene, 1));
    SpringLow spring = SpringLow.after(model, END);
    MiticideCourse oxalic = Shipped.course("oxalic-dribble", LocalDate.of(2018, 11, 15));
    Trajectory t =
        DailyEngine.run(
            Scenario.until(model, new Plan("winter", List.of(oxalic)), start, spring.day()),
            Member.average(1));
    return Wintering.defaults().lost(t.at(Quantity.ADULTS, spring.day()), spring);
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
