package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.measure.OutOfRange;
import org.junit.jupiter.api.Test;

class RandomEffectsTest {
  /**
   * Tuberculosis among the vaccinated and others in thirteen trials: cases and others in either arm
   * (Colditz et al. 1994, JAMA 271:698, the worked example of many texts).
   */
  private static final int[][] VACCINE = {
    {4, 119, 11, 128},
    {6, 300, 29, 274},
    {3, 228, 11, 209},
    {62, 13536, 248, 12619},
    {33, 5036, 47, 5761},
    {180, 1361, 372, 1079},
    {8, 2537, 10, 619},
    {505, 87886, 499, 87892},
    {29, 7470, 45, 7232},
    {17, 1699, 65, 1600},
    {186, 50448, 141, 27197},
    {5, 2493, 3, 2338},
    {27, 16886, 29, 17825}
  };

  /**
   * Published for the logarithms of the risk ratios, restricted maximum likelihood: variance
   * between trials 0.3132, mean -0.7145, standard error 0.1798 (vignette "Bayesian Meta-Analysis"
   * of RoBMA by Bartos, which prints the output of metafor by Viechtbauer).
   */
  @Test
  void theVaccineTrialsGiveThePublishedFigures() {
    double[] logRatio = new double[VACCINE.length];
    double[] variance = new double[VACCINE.length];
    for (int i = 0; i < VACCINE.length; i++) {
      double cases = VACCINE[i][0];
      double arm = cases + VACCINE[i][1];
      double otherCases = VACCINE[i][2];
      double otherArm = otherCases + VACCINE[i][3];
      logRatio[i] = Math.log(cases / arm / (otherCases / otherArm));
      variance[i] = 1 / cases - 1 / arm + 1 / otherCases - 1 / otherArm;
    }
    RandomEffects pooled = RandomEffects.of(logRatio, variance);
    assertThat(pooled.between() * pooled.between()).isCloseTo(0.3132, within(0.00005));
    assertThat(pooled.mean()).isCloseTo(-0.7145, within(0.00005));
    assertThat(pooled.standardError()).isCloseTo(0.1798, within(0.00005));
    assertThat(pooled.trials()).isEqualTo(13);
  }

  /** With equal errors the likelihood peaks where the sample variance is errors plus spread. */
  @Test
  void equalErrorsGiveTheSampleVarianceLessTheError() {
    RandomEffects pooled = RandomEffects.of(new double[] {1, 2, 6}, new double[] {0.5, 0.5, 0.5});
    assertThat(pooled.mean()).isCloseTo(3, within(1e-9));
    assertThat(pooled.between() * pooled.between()).isCloseTo(7 - 0.5, within(1e-6));
    assertThat(pooled.standardError()).isCloseTo(Math.sqrt(7 / 3.0), within(1e-6));
  }

  @Test
  void trialsThatAgreeHaveNoSpreadBetweenThem() {
    RandomEffects pooled = RandomEffects.of(new double[] {1, 1.1}, new double[] {1, 1});
    assertThat(pooled.between()).isZero();
    assertThat(pooled.mean()).isCloseTo(1.05, within(1e-12));
  }

  @Test
  void oneTrialIsItsOwnMean() {
    RandomEffects one = RandomEffects.of(new double[] {0.3}, new double[] {0.04});
    assertThat(one).isEqualTo(new RandomEffects(0.3, Math.sqrt(1 / (1 / 0.04)), 0, 1));
  }

  @Test
  void anErrorOfNothingIsRefused() {
    assertThatThrownBy(() -> RandomEffects.of(new double[] {1, 2}, new double[] {0, 1}))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("variance of a trial");
  }
}
