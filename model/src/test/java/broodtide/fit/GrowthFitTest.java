package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.fit.GrowthFit.Finding;
import broodtide.measure.OutOfRange;
import broodtide.wash.Interval;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Reference figures from R 4.2.2 with MASS 7.3, on invented counts: {@code y <-
 * c(3,9,4,16,12,35,20,61); t <- c(0,14,30,45,61,75,92,110); n <-
 * c(300,310,295,320,300,305,290,315); E <- n*0.9; ct <- glm.control(epsilon=1e-10, maxit=100)}. The
 * profile: {@code ll <- function(b) logLik(glm.nb(y ~ 1 + offset(log(E)+b*t), control=ct)); o <-
 * optimize(ll, c(0,.06), maximum=TRUE, tol=1e-12); g <- function(b) 2*(o$objective - ll(b)) -
 * qchisq(.9, 1); uniroot(g, c(o$maximum-.03, o$maximum), tol=1e-12)}, and upwards alike.
 */
class GrowthFitTest {
  private static final LocalDate START = LocalDate.of(2025, 5, 1);
  private static final int[] MITES = {3, 9, 4, 16, 12, 35, 20, 61};
  private static final int[] DAYS = {0, 14, 30, 45, 61, 75, 92, 110};
  private static final int[] BEES = {300, 310, 295, 320, 300, 305, 290, 315};

  private static List<Wash> washes(int[] mites, int[] days, int[] bees) {
    List<Wash> washes = new ArrayList<>();
    for (int i = 0; i < mites.length; i++) {
      washes.add(Wash.of(START.plusDays(days[i]), "A", mites[i], bees[i]));
    }
    return washes;
  }

  private static List<Wash> pair(int first, int second, int days) {
    return washes(new int[] {first, second}, new int[] {0, days}, new int[] {300, 300});
  }

  private static List<Wash> eight() {
    return washes(MITES, DAYS, BEES);
  }

  /** R: {@code glm.nb(y ~ t + offset(log(E)), control=ct)}, and the profile above. */
  @Tag("outside")
  @Test
  void negativeBinomialAgreesWithR() {
    GrowthFit fit = GrowthFit.of(eight());
    assertThat(fit.growth().perDay().orElseThrow()).isCloseTo(0.0230628976181, within(1e-9));
    assertThat(1 / fit.overDispersion().orElseThrow()).isCloseTo(13.3224482418, within(1e-4));
    assertThat(fit.logLikelihood().orElseThrow()).isCloseTo(-24.8200263786, within(1e-9));
    Interval interval = fit.growth().perDayInterval();
    assertThat(interval.low()).isCloseTo(0.0161083374283, within(1e-9));
    assertThat(interval.high()).isCloseTo(0.0304073674826, within(1e-9));
    assertThat(fit.differsFromZero()).isTrue();
    assertThat(fit.finding()).isEqualTo(Finding.RATE);
  }

  /** R: {@code s <- factor(t > 50); glm.nb(y ~ 0 + s + t + offset(log(E)), control=ct)}. */
  @Tag("outside")
  @Test
  void aTreatmentBreaksTheLevelAndNotTheRate() {
    GrowthFit fit = GrowthFit.of(eight(), List.of(START.plusDays(50)), 0.9);
    assertThat(fit.growth().perDay().orElseThrow()).isCloseTo(0.0251412858219, within(1e-8));
    assertThat(1 / fit.overDispersion().orElseThrow()).isCloseTo(13.6399586192, within(1e-4));
    assertThat(fit.logLikelihood().orElseThrow()).isCloseTo(-24.766923764, within(1e-9));
    Interval interval = fit.growth().perDayInterval();
    assertThat(interval.low()).isCloseTo(0.0117243287333, within(1e-9));
    assertThat(interval.high()).isCloseTo(0.0391133612028, within(1e-9));
  }

  /**
   * R: {@code glm(c(3,5,8,12) ~ c(0,30,61,91) + offset(log(c(300,310,290,300)*.9)),
   * family=poisson)}; counts that scatter less than by chance, so that the maximum is Poisson's.
   */
  @Tag("outside")
  @Test
  void poissonIsTheLimit() {
    GrowthFit fit =
        GrowthFit.of(
            washes(
                new int[] {3, 5, 8, 12},
                new int[] {0, 30, 61, 91},
                new int[] {300, 310, 290, 300}));
    assertThat(fit.overDispersion()).hasValue(0);
    assertThat(fit.growth().perDay().orElseThrow()).isCloseTo(0.0150908579698, within(1e-9));
    assertThat(fit.logLikelihood().orElseThrow()).isCloseTo(-7.39235845255, within(1e-9));
    assertThat(fit.growth().perDayInterval().low()).isCloseTo(0.0054576837, within(1e-9));
    assertThat(fit.growth().perDayInterval().high()).isCloseTo(0.0254313737, within(1e-9));
  }

  /**
   * By hand: 6 and then 18 mites of 300 bees, 30 days apart: rate ln 3 / 30. Given their sum 24 the
   * counts are binomial with odds e^(30 g), so the interval solves 2 [18 ln(18/24) + 6 ln(6/24) -
   * 18 ln p - 6 ln(1 - p)] = 3.841 in p = e^(30 g) / (1 + e^(30 g)).
   */
  @Tag("outside")
  @Test
  void twoWashesWorkedByHand() {
    GrowthFit fit = GrowthFit.of(pair(6, 18, 30), List.of(), 0.95);
    assertThat(fit.growth().perDay().orElseThrow()).isCloseTo(Math.log(3) / 30, within(1e-10));
    assertThat(fit.overDispersion()).hasValue(0);
    Interval interval = fit.growth().perDayInterval();
    for (double g : new double[] {interval.low(), interval.high()}) {
      double p = 1 / (1 + Math.exp(-30 * g));
      double depth =
          2 * (18 * Math.log(0.75) + 6 * Math.log(0.25) - 18 * Math.log(p) - 6 * Math.log(1 - p));
      assertThat(depth).isCloseTo(3.841458821, within(1e-7));
    }
    assertThat(interval.low()).isCloseTo(0.00764585722528, within(1e-9));
    assertThat(interval.high()).isCloseTo(0.07043476058302, within(1e-9));
  }

  /**
   * Pooled untreated splits of Aurell, Bruckner, Steury & Williams 2025 (J. Econ. Entomol.,
   * toaf126, open data): 1.32, 3.97 and 7.74 mites per 100 bees on days 0, 75 and 102, with growth
   * of 0.0147 and 0.0247 a day.
   */
  @Tag("outside")
  @Test
  void untreatedSplits() {
    assertThat(rate(132, 397, 75)).isCloseTo(0.0147, within(5e-5));
    assertThat(rate(397, 774, 27)).isCloseTo(0.0247, within(5e-5));
  }

  private static double rate(int first, int second, int days) {
    int[] bees = {10_000, 10_000};
    GrowthFit fit = GrowthFit.of(washes(new int[] {first, second}, new int[] {0, days}, bees));
    return fit.growth().perDay().orElseThrow();
  }

  @Test
  void growthInOtherWords() {
    Growth growth = GrowthFit.of(pair(6, 18, 30), List.of(), 0.95).growth();
    assertThat(growth.monthFactor().orElseThrow()).isCloseTo(Math.pow(3, 30.4 / 30), within(1e-9));
    assertThat(growth.perMonth().orElseThrow()).isCloseTo(Math.log(3) * 30.4 / 30, within(1e-9));
    assertThat(growth.doublingDays().orElseThrow())
        .isCloseTo(30 * Math.log(2) / Math.log(3), within(1e-9));
    assertThat(growth.halvingDays()).isEmpty();
    assertThat(growth.monthFactorInterval().low())
        .isCloseTo(Math.exp(30.4 * 0.00764585722528), within(1e-6));
  }

  @Test
  void declineIsTheMirrorOfGrowth() {
    Growth up = GrowthFit.of(pair(6, 18, 30)).growth();
    GrowthFit down = GrowthFit.of(pair(18, 6, 30));
    assertThat(down.growth().perDay().orElseThrow())
        .isCloseTo(-up.perDay().orElseThrow(), within(1e-10));
    assertThat(down.growth().perDayInterval().low())
        .isCloseTo(-up.perDayInterval().high(), within(1e-9));
    assertThat(down.growth().halvingDays().orElseThrow())
        .isCloseTo(up.doublingDays().orElseThrow(), within(1e-6));
  }

  /**
   * Two counts make a line through both. The interval at the first day is that of the first count
   * alone: twice the log likelihood of a Poisson count of 10 falls by 2.7055 where 2 (m - 10 - 10
   * ln(m / 10)) is that.
   */
  @Test
  void theLineOfTwoWashesGoesThroughBoth() {
    List<Wash> two = pair(10, 40, 30);
    double bees = two.get(0).exposure();
    List<GrowthPoint> line = GrowthFit.of(two).line().get(0);
    GrowthPoint first = line.get(0);
    assertThat(first.date()).isEqualTo(START);
    assertThat(first.perHundred()).isCloseTo(100 * 10 / bees, within(1e-6));
    assertThat(line.get(line.size() - 1).perHundred()).isCloseTo(100 * 40 / bees, within(1e-6));
    for (double end : new double[] {first.interval().low(), first.interval().high()}) {
      double m = end * bees / 100;
      assertThat(2 * (m - 10 - 10 * Math.log(m / 10))).isCloseTo(2.705543, within(1e-4));
    }
    assertThat(first.interval().low()).isLessThan(first.perHundred());
    assertThat(first.interval().high()).isGreaterThan(first.perHundred());
    // Steady growth: a fourfold rise in thirty days goes on as a fourfold rise.
    List<GrowthPoint> ahead = GrowthFit.of(two).lineAhead(START.plusDays(60));
    assertThat(ahead.get(ahead.size() - 1).perHundred()).isCloseTo(100 * 160 / bees, within(1e-5));
  }

  @Test
  void aTreatmentPartsTheLine() {
    GrowthFit fit = GrowthFit.of(eight(), List.of(START.plusDays(50)), 0.9);
    assertThat(fit.line()).hasSize(2);
    assertThat(fit.line().get(1).get(0).date()).isEqualTo(START.plusDays(61));
    assertThat(GrowthFit.of(pair(0, 5, 30)).line()).isEmpty();
    assertThat(GrowthFit.of(pair(0, 5, 30)).lineAhead(START.plusDays(60))).isEmpty();
  }

  @Test
  void orderOfTheWashesDoesNotMatter() {
    List<Wash> reversed = eight();
    Collections.reverse(reversed);
    assertThat(GrowthFit.of(reversed).growth()).isEqualTo(GrowthFit.of(eight()).growth());
  }

  @Test
  void washesThatTellNothingSaySo() {
    assertSilent(List.of(), List.of(), Finding.NO_WASH);
    assertSilent(List.of(Wash.of(START, "A", 7, 300)), List.of(), Finding.ONE_WASH);
    assertSilent(pair(0, 0, 30), List.of(), Finding.NO_MITES);
    assertSilent(pair(3, 9, 0), List.of(), Finding.NO_TWO_DAYS);
    assertSilent(pair(3, 9, 30), List.of(START.plusDays(10)), Finding.NO_TWO_DAYS);
    List<Wash> zeros =
        washes(new int[] {0, 0, 5}, new int[] {0, 30, 60}, new int[] {300, 300, 300});
    assertSilent(zeros, List.of(START.plusDays(40)), Finding.MITES_ON_ONE_DAY);
    GrowthFit flat = GrowthFit.of(pair(5, 6, 30));
    assertThat(flat.differsFromZero()).isFalse();
    assertThat(flat.finding()).isEqualTo(Finding.RATE);
    assertThat(flat.growth().perDay()).isPresent();
  }

  private static void assertSilent(List<Wash> washes, List<LocalDate> breaks, Finding finding) {
    GrowthFit fit = GrowthFit.of(washes, breaks, 0.9);
    assertThat(fit.differsFromZero()).isFalse();
    assertThat(fit.finding()).isEqualTo(finding);
    assertThat(fit.growth().perDay()).isEmpty();
    assertThat(fit.growth().monthFactor()).isEmpty();
    assertThat(fit.growth().monthFactorInterval().low()).isEqualTo(0);
    assertThat(fit.overDispersion()).isEmpty();
    assertThat(fit.whyNoForecast(START.plusDays(90))).isPresent();
    assertThat(fit.forecast(START.plusDays(90), 300)).isEmpty();
  }

  /**
   * By hand: none and then 9 mites of as many bees, 30 days apart. The likelihood of p = share of
   * the second is p^9, so the lower end solves -18 ln p = 2.7055 (level 0.9).
   */
  @Tag("outside")
  @Test
  void mitesOnlyInTheLastWashBoundGrowthFromBelow() {
    GrowthFit fit = GrowthFit.of(pair(0, 9, 30));
    double p = Math.exp(-2.705543454 / 18);
    Interval interval = fit.growth().perDayInterval();
    assertThat(interval.low()).isCloseTo(Math.log(p / (1 - p)) / 30, within(1e-8));
    assertThat(interval.high()).isEqualTo(Double.POSITIVE_INFINITY);
    assertThat(fit.growth().perDay()).isEmpty();
    assertThat(fit.differsFromZero()).isTrue();
    assertThat(fit.finding()).isEqualTo(Finding.ONLY_ON_LAST_DAY);
    assertThat(fit.forecast(START.plusDays(60), 300)).isEmpty();
    GrowthFit mirrored = GrowthFit.of(pair(9, 0, 30));
    assertThat(mirrored.growth().perDayInterval().high()).isCloseTo(-interval.low(), within(1e-8));
    assertThat(GrowthFit.of(pair(0, 1, 30)).differsFromZero()).isFalse();
  }

  @Test
  void stretchesWithoutMitesChangeNothing() {
    List<Wash> more = eight();
    more.add(Wash.of(START.plusDays(200), "A", 0, 300));
    more.add(Wash.of(START.plusDays(230), "A", 0, 300));
    GrowthFit fit = GrowthFit.of(more, List.of(START.plusDays(150)), 0.9);
    assertThat(fit.growth()).isEqualTo(GrowthFit.of(eight()).growth());
    assertThat(fit.whyNoForecast(START.plusDays(240)))
        .contains(GrowthFit.NoForecast.NO_MITES_SINCE);
  }

  @Test
  void severalColoniesAreRefused() {
    List<Wash> two = List.of(Wash.of(START, "A", 1, 300), Wash.of(START, "B", 1, 300));
    assertThatThrownBy(() -> GrowthFit.of(two))
        .isInstanceOf(OutOfRange.class)
        .hasMessage("colony is B; expected one colony, here A");
    assertThatThrownBy(() -> GrowthFit.of(eight(), List.of(), 1)).isInstanceOf(OutOfRange.class);
  }

  @Test
  void hardCountsStillEndInFiguresOrWords() {
    int[][] hard = {
      {0, 0, 0, 300},
      {300, 0, 0, 0},
      {1, 300, 1, 300},
      {0, 300, 0, 0},
      {0, 1, 0, 1},
      {300, 300, 1, 0}
    };
    int[] bees = {300, 300, 300, 300};
    for (int[] mites : hard) {
      for (int[] days : new int[][] {{0, 1, 2, 3}, {0, 1, 200, 400}, {0, 0, 30, 30}}) {
        GrowthFit fit = GrowthFit.of(washes(mites, days, bees));
        Interval interval = fit.growth().perDayInterval();
        assertThat(interval.low()).isLessThan(interval.high());
        fit.growth().perDay().ifPresent(g -> assertThat(interval.holds(g)).isTrue());
        fit.forecast(START.plusDays(430), 300)
            .ifPresent(f -> assertThat(f.interval(0.9).low()).isLessThanOrEqualTo(f.median()));
      }
    }
  }
}
