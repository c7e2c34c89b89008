package broodtide.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The colours as seen with three kinds of sight. Red-blind and green-blind sight is simulated with
 * the matrices of Machado, Oliveira & Fernandes 2009 (IEEE TVCG 15:1291, severity 1.0; from memory)
 * on linear light; differences are CIE 1994 in CIELAB, D65.
 */
@Tag("outside")
class PaletteTest {
  // Its numbers are never changed.
  @SuppressWarnings("ImmutableEnumChecker")
  enum Sight {
    USUAL(1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0),
    RED_BLIND(
        0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116,
        1.051998),
    GREEN_BLIND(
        0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881);

    private final List<Double> m;

    Sight(Double... m) {
      this.m = List.of(m);
    }

    double[] lab(Colour c) {
      double[] seen = new double[3];
      for (int i = 0; i < 3; i++) {
        double sum = 0;
        for (int j = 0; j < 3; j++) {
          double v = c.channel(j) / 255.0;
          sum += m.get(3 * i + j) * (v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4));
        }
        seen[i] = Math.max(0, Math.min(1, sum));
      }
      double x = f((0.4124564 * seen[0] + 0.3575761 * seen[1] + 0.1804375 * seen[2]) / 0.95047);
      double y = f(0.2126729 * seen[0] + 0.7151522 * seen[1] + 0.0721750 * seen[2]);
      double z = f((0.0193339 * seen[0] + 0.1191920 * seen[1] + 0.9503041 * seen[2]) / 1.08883);
      return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
    }

    private static double f(double t) {
      return t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
    }

    double difference(Colour one, Colour other) {
      double[] a = lab(one);
      double[] b = lab(other);
      double ca = Math.hypot(a[1], a[2]);
      double cb = Math.hypot(b[1], b[2]);
      double dl = a[0] - b[0];
      double dc = ca - cb;
      double dh2 = Math.max(0, sq(a[1] - b[1]) + sq(a[2] - b[2]) - dc * dc);
      double c = Math.sqrt(ca * cb);
      return Math.sqrt(dl * dl + sq(dc / (1 + 0.045 * c)) + dh2 / sq(1 + 0.015 * c));
    }

    private static double sq(double v) {
      return v * v;
    }
  }

  @Test
  void theSimulationItselfMakesRedAndGreenAlike() {
    Colour red = Colour.of("#c03030");
    Colour green = Colour.of("#5a7a00");
    assertThat(Sight.USUAL.difference(red, green)).isGreaterThan(40);
    assertThat(Sight.GREEN_BLIND.difference(red, green)).isLessThan(20);
    double[] white = Sight.USUAL.lab(Palette.PAPER);
    assertThat(white[0]).isBetween(99.99, 100.01);
  }

  @ParameterizedTest
  @EnumSource
  void anyTwoLinesAreToldApart(Sight sight) {
    for (int i = 0; i < Palette.kinds(); i++) {
      for (int j = 0; j < i; j++) {
        assertThat(sight.difference(Palette.line(i), Palette.line(j)))
            .as("lines %d and %d", i, j)
            .isGreaterThan(20);
      }
    }
  }

  @Test
  void linesDifferInGreyAndInTheirDashes() {
    Set<String> dashes = new HashSet<>();
    for (int i = 0; i <= PanelStack.NAMED_AT_ENDS; i++) {
      assertThat(dashes.add(Palette.dash(i))).as("dash of line %d", i).isTrue();
    }
    for (int i = 0; i < Palette.kinds(); i++) {
      for (int j = 0; j < i; j++) {
        double a = Sight.USUAL.lab(Palette.line(i))[0];
        double b = Sight.USUAL.lab(Palette.line(j))[0];
        assertThat(Math.abs(a - b)).as("lightness of %d and %d", i, j).isGreaterThan(6);
      }
    }
  }

  @Test
  void thirtySixLinesAreAllDrawnDifferently() {
    Set<String> pens = new HashSet<>();
    for (int i = 0; i < 36; i++) {
      assertThat(pens.add(Palette.line(i).css() + Palette.dash(i))).as("line %d", i).isTrue();
    }
  }

  /** Least contrasts of WCAG 2.1: 3 for lines (1.4.11), 4.5 for text (1.4.3). */
  @Test
  void linesAndTextStandOutFromThePaper() {
    for (int i = 0; i < Palette.kinds(); i++) {
      assertThat(Palette.line(i).contrast(Palette.PAPER)).isGreaterThanOrEqualTo(3);
      assertThat(Palette.line(i).asText().contrast(Palette.PAPER)).isGreaterThanOrEqualTo(4.5);
    }
    assertThat(Palette.MUTED.contrast(Palette.PAPER)).isGreaterThanOrEqualTo(4.5);
    for (int i = 0; i < 3; i++) {
      assertThat(Palette.INK.contrast(Palette.span(i))).isGreaterThanOrEqualTo(7);
    }
  }

  /** Worked values of WCAG 2.1: black on white 21, and #767676 just reaches 4.5. */
  @Test
  void contrastAsPublished() {
    assertThat(Colour.of("#000000").contrast(Palette.PAPER)).isBetween(20.999, 21.001);
    assertThat(Colour.of("#767676").contrast(Palette.PAPER)).isBetween(4.5, 4.55);
    assertThat(Colour.of("#777777").contrast(Palette.PAPER)).isLessThan(4.5);
  }

  @ParameterizedTest
  @EnumSource
  void theScaleDarkensEvenly(Sight sight) {
    double before = sight.lab(Palette.scale(0))[0];
    assertThat(before).isGreaterThan(90);
    for (int i = 1; i <= 20; i++) {
      double l = sight.lab(Palette.scale(i / 20.0))[0];
      assertThat(before - l).as("step %d", i).isBetween(1.5, 6.5);
      before = l;
    }
    assertThat(before).isLessThan(30);
  }

  @Test
  void numbersCanBeReadOnEveryStepOfTheScale() {
    for (int i = 0; i <= 100; i++) {
      Colour ground = Palette.scale(i / 100.0);
      assertThat(Palette.over(ground).contrast(ground)).as(ground.css()).isGreaterThan(3.8);
    }
  }
}
