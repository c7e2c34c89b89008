package broodtide.mite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.PascalDistribution;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The closed forms against sums over the distributions of Commons Math, cell by cell. */
@Tag("outside")
class CellLoadTest {
  @ParameterizedTest
  @CsvSource({"0.01,2", "0.3,2", "1.7,2", "6,2", "0.8,1", "3,5"})
  void clumpedFormsAreTheSumsOverCells(double m, int k) {
    PascalDistribution cells = new PascalDistribution(k, k / (k + m));
    double c = 0.15;
    double kill = 0.06;
    double daughters = 0;
    double alive = 0;
    for (int mothers = 0; mothers < 2000; mothers++) {
      double p = cells.probability(mothers);
      daughters += p * mothers * Math.pow(1 - c, mothers - 1.0);
      alive += p * Math.pow(1 - kill, mothers);
    }
    assertThat(CellLoad.fecundity(m, c, k)).isCloseTo(daughters / m, within(1e-10));
    assertThat(CellLoad.empty(m, k)).isCloseTo(cells.probability(0), within(1e-12));
    assertThat(CellLoad.untouched(m, kill, k)).isCloseTo(alive, within(1e-10));
  }

  /** All mothers carry virus, none does, and some do: less of the bees that live with a mite. */
  @ParameterizedTest
  @CsvSource({"0.01,2", "0.3,2", "1.7,0.7", "6,3"})
  void overtBeesAreThoseThatLiveWithAMiteThatCarriesVirus(double m, double k) {
    double living = CellLoad.untouched(m, 0.06, k) - CellLoad.empty(m, k);
    assertThat(CellLoad.overt(m, 0.06, 1, k)).isCloseTo(living, within(1e-14));
    assertThat(CellLoad.overt(m, 0.06, 0, k)).isZero();
    assertThat(CellLoad.overt(0, 0.06, 1, k)).isZero();
    double withVirus = 1 - Math.pow(1 + 0.8 * m / k, -k);
    double withMite = 1 - Math.pow(1 + m / k, -k);
    assertThat(CellLoad.overt(m, 0.06, 0.8, k) / living)
        .isCloseTo(withVirus / withMite, within(1e-10));
  }

  @ParameterizedTest
  @CsvSource({"0.01", "0.3", "1.7", "6"})
  void withoutClumpingTheFormsArePoisson(double m) {
    PoissonDistribution cells = new PoissonDistribution(m);
    double c = 0.1;
    double daughters = 0;
    for (int mothers = 1; mothers < 200; mothers++) {
      daughters += cells.probability(mothers) * mothers * Math.pow(1 - c, mothers - 1.0);
    }
    double infinite = Double.POSITIVE_INFINITY;
    assertThat(CellLoad.fecundity(m, c, infinite)).isCloseTo(daughters / m, within(1e-12));
    assertThat(CellLoad.empty(m, infinite)).isCloseTo(cells.probability(0), within(1e-14));
    assertThat(CellLoad.fecundity(m, c, 1e7))
        .isCloseTo(CellLoad.fecundity(m, c, infinite), within(1e-6));
  }
}
