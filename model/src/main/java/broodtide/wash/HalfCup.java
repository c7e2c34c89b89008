package broodtide.wash;

import broodtide.measure.Measure;
import broodtide.measure.Measures;
import broodtide.measure.Tag;
import java.util.Map;

/** What half a cup of bees holds when nobody has counted it. */
public record HalfCup(
    @Measure(
            meaning = "bees in a half cup that were not counted",
            value = 320,
            unit = "bees",
            min = 50,
            max = 2000,
            tag = Tag.DATA,
            source = "means of 281 to 362 in five trials, open data")
        double bees,
    @Measure(
            meaning = "standard deviation of the bees in a half cup",
            value = 45,
            unit = "bees",
            min = 0,
            max = 500,
            tag = Tag.DATA,
            source = "standard deviations of 32 to 72 in five trials, open data")
        double sd) {
  private static final HalfCup USUAL = Measures.build(HalfCup.class, Map.of());

  /** Checks the ranges. */
  public HalfCup {
    Measures.checkAll(HalfCup.class, bees, sd);
  }

  /** {@return the default: 320 bees, give or take 45} */
  public static HalfCup usual() {
    return USUAL;
  }
}
