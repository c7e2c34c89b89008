package broodtide.results;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The quick way to four digits, beside exact decimal arithmetic. */
class JsonFiguresTest {
  @Test
  void fourDigitsAsExactArithmeticHasThem() {
    Random random = new Random(4);
    for (int i = 0; i < 200_000; i++) {
      double value = random.nextGaussian() * Math.pow(10, random.nextInt(13) - 5);
      same(value);
      same(Math.rint(value * 1e5) / 1e5);
    }
  }

  @Test
  void halvesPowersAndFarNumbers() {
    for (double value :
        new double[] {
          0.00012345,
          1.00005,
          12.345,
          99995,
          99994.5,
          0.99995,
          9999.5,
          1,
          10,
          1000,
          1e-3,
          1e-6,
          9.99999999e-4,
          1e22,
          1.2345e30,
          1.2345678e300,
          -2.5,
          -12344.5,
          123450,
          0.5,
          2.00025
        }) {
      same(value);
    }
  }

  @Test
  void whatRoundingLeftIsZero() {
    assertEquals(BigDecimal.ZERO, JsonFigures.four(9e-7));
    assertEquals(BigDecimal.ZERO, JsonFigures.four(-0.0));
  }

  private static void same(double value) {
    if (Math.abs(value) >= 1e-6) {
      assertEquals(
          new BigDecimal(value).round(new MathContext(4)).stripTrailingZeros(),
          JsonFigures.four(value),
          () -> Double.toString(value));
    }
  }
}
