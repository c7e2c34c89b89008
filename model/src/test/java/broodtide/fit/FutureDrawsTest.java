package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.control.Control;
import broodtide.control.HazardSpread;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import java.time.LocalDate;
import java.util.List;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.junit.jupiter.api.Test;

class FutureDrawsTest {
  private static final int MANY = 4096;
  private static final LocalDate AUGUST = LocalDate.of(2026, 8, 21);
  private static final Control FORMIC = course("formic", AUGUST);
  private static final Control DRIBBLE = course("dribble", AUGUST.plusDays(120));

  @Test
  void theSameTreatmentHasTheSameLuckInEveryPlan() {
    double[] alone = FutureDraws.of(List.of(DRIBBLE), "A", MANY).get(0);
    assertThat(FutureDraws.of(List.of(FORMIC, DRIBBLE), "A", MANY).get(1)).containsExactly(alone);
    assertThat(FutureDraws.of(List.of(DRIBBLE, FORMIC), "A", MANY).get(0)).containsExactly(alone);
    Control onSunday = course("dribble", AUGUST.plusDays(121));
    assertThat(FutureDraws.of(List.of(onSunday), "A", MANY).get(0)).containsExactly(alone);
  }

  /** Another week is another treatment; what is the colony's own stays the same. */
  @Test
  void anotherWeekHasAnotherSharedPart() {
    double[] one = FutureDraws.of(List.of(DRIBBLE), "A", MANY).get(0);
    Control aWeekLater = course("dribble", AUGUST.plusDays(127));
    double[] other = FutureDraws.of(List.of(aWeekLater), "A", MANY).get(0);
    double trials = HazardSpread.USUAL.trials() / HazardSpread.USUAL.total();
    assertThat(correlation(one, other)).isCloseTo(1 - trials * trials, within(0.04));
  }

  @Test
  void aSecondCourseOfTheSameKindHasLuckOfItsOwnWhateverTheOrder() {
    Control again = course("dribble", AUGUST.plusDays(150));
    List<double[]> rising = FutureDraws.of(List.of(DRIBBLE, again), "A", MANY);
    List<double[]> falling = FutureDraws.of(List.of(again, DRIBBLE), "A", MANY);
    assertThat(rising.get(0)).containsExactly(falling.get(1));
    assertThat(rising.get(1)).containsExactly(falling.get(0));
    assertThat(correlation(rising.get(0), rising.get(1))).isCloseTo(0, within(0.06));
  }

  /**
   * Each part is evenly spread, so the mean is 0 and the variance 1 but for their chance meeting.
   */
  @Test
  void luckIsStandardNormal() {
    List<double[]> luck = FutureDraws.of(List.of(FORMIC, DRIBBLE), "A", MANY);
    for (double[] z : luck) {
      assertThat(StatUtils.mean(z)).isCloseTo(0, within(1e-9));
      assertThat(StatUtils.variance(z)).isCloseTo(1, within(0.03));
    }
    assertThat(correlation(luck.get(0), luck.get(1))).isCloseTo(0, within(0.06));
  }

  /** Two colonies treated together share what differs between trials, and that alone. */
  @Test
  void coloniesShareThePartBetweenTrials() {
    double[] one = FutureDraws.of(List.of(FORMIC), "A", MANY).get(0);
    double[] other = FutureDraws.of(List.of(FORMIC), "B", MANY).get(0);
    double trials = HazardSpread.USUAL.trials();
    double total = HazardSpread.USUAL.total();
    double shared = trials * trials / (total * total);
    assertThat(correlation(one, other)).isCloseTo(shared, within(0.04));
    double[] trial =
        FutureDraws.trial(FutureDraws.treatment(FORMIC.course().orElseThrow()), 1, MANY);
    assertThat(correlation(one, trial)).isCloseTo(trials / total, within(0.03));
    assertThat(correlation(other, trial)).isCloseTo(trials / total, within(0.03));
  }

  private static double correlation(double[] a, double[] b) {
    return new PearsonsCorrelation().correlation(a, b);
  }

  private static Control course(String name, LocalDate start) {
    Miticide substance = new Miticide(name, 14, 0.2, 0, 0, 0, 0, 40, Miticide.SupersRule.OFF);
    return MiticideCourse.once(name + " on " + start, substance, start);
  }
}
