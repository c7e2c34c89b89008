package broodtide.mite;

import static broodtide.measure.Tag.CHOICE;

import broodtide.measure.Measure;
import broodtide.measure.Measures;

/** What the stock of bees and the strain of mites bring to mite reproduction. */
public record StockTraits(
    @Measure(
            meaning = "share by which the stock cuts daughters",
            value = 0,
            unit = "1",
            min = 0,
            max = 1,
            tag = CHOICE,
            source = "hygienic stock 0.2-0.4, strongly resistant 0.5-0.8: choice")
        double hygiene,
    @Measure(
            meaning = "factor on daughters, one for average mites",
            value = 1,
            unit = "1",
            min = 0,
            max = 3,
            tag = CHOICE,
            source = "fitted to washes where there are any")
        double vigour) {

  /** Average mites on unselected stock. */
  public static final StockTraits AVERAGE = new StockTraits(0, 1);

  /** Checks both ranges. */
  public StockTraits {
    Measures.checkAll(StockTraits.class, hygiene, vigour);
  }

  /** {@return the factor on daughters that the two make together} */
  public double fertility() {
    return vigour * (1 - hygiene);
  }
}
