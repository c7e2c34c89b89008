package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.engine.Workers;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Simulation-based calibration of the season posterior: a look, and the proof. */
class CalibrationTest {
  private static final String COMMAND =
      "mvn -pl model test -Dtest=CalibrationTest#ranksAmongDraws* -Dgroups=long -DexcludedGroups="
          + " -Dcalibration.figure=calibration.svg";

  /** Few repeats: catches ranks that pile up at an end or in the middle. */
  @Test
  void ranksOfAFewRepeatsAreSpread() {
    try (Workers workers = new Workers(2)) {
      for (Calibration.Ranks r : new Calibration(256, workers).run(28, 1)) {
        assertThat(r.p(4)).as(r.name() + " " + Arrays.toString(r.ranks())).isGreaterThan(0.001);
      }
    }
  }

  /**
   * A bank of seasons, treatment included, from which all repeats draw: as uniform as a sampler of
   * each. Bounds as below.
   */
  @Test
  @Tag("slow")
  void ranksAmongDrawsFromABankAreUniform() {
    try (Workers workers = new Workers(2)) {
      uniform(Calibration.ofBanks(512, Integer.MAX_VALUE, workers).run(1000, 77));
    }
  }

  /**
   * Many repeats. Ten quantities are looked at in two ways, so that a sampler without fault would
   * fail the bound for about one seed in 100; the seed is fixed.
   */
  @Test
  @Tag("long")
  void ranksAreUniform() {
    try (Workers workers = new Workers(2)) {
      uniform(new Calibration(PARTICLES, workers).run(REPEATS, 77));
    }
  }

  /**
   * The same among draws from a hundred banks, as hives are read. Draws the figure where the
   * property {@code calibration.figure} says.
   */
  @Test
  @Tag("long")
  void ranksAmongDrawsFromBanksAreUniform() throws IOException {
    try (Workers workers = new Workers(2)) {
      List<Calibration.Ranks> all =
          Calibration.ofBanks(PARTICLES, REPEATS / 100, workers).run(REPEATS, 77);
      String figure = System.getProperty("calibration.figure", "target/calibration.svg");
      Files.writeString(Path.of(figure), RankFigure.svg(all, PARTICLES, COMMAND));
      uniform(all);
    }
  }

  private static void uniform(List<Calibration.Ranks> all) {
    for (Calibration.Ranks r : all) {
      assertThat(r.p(8)).as(r.name() + " " + Arrays.toString(r.histogram(8))).isGreaterThan(5e-4);
      assertThat(r.p(16)).as(r.name() + " in 16 bins").isGreaterThan(5e-4);
    }
  }

  private static final int REPEATS = 2000;
  private static final int PARTICLES = 1024;
}
