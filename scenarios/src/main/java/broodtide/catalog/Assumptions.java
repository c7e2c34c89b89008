package broodtide.catalog;

import static broodtide.measure.Tag.CHOICE;
import static broodtide.measure.Tag.DERIVED;

import broodtide.fit.StrengthNote;
import broodtide.measure.Measure;
import broodtide.measure.Measures;
import java.util.Map;

/** Figures that turn a beekeeper's words into numbers. */
public record Assumptions(
    @Measure(
            meaning = "adult bees on a standard deep frame covered on both sides",
            value = StrengthNote.BEES_PER_FRAME,
            unit = "bees",
            min = 1000,
            max = 4000,
            tag = CHOICE,
            source = "2,000 to 2,400 in common practice, no source; the middle by choice")
        double beesPerFrame,
    @Measure(
            meaning = "mites that arrive in June and July where few colonies stand around",
            value = 1.27,
            unit = "mites/day",
            min = 0,
            max = 1000,
            tag = DERIVED,
            source =
                "geometric middle of 0.7 and 2.3, July to November, Frey & Rosenkranz 2014; June"
                    + " after Greatti et al. 1992")
        double sparseArrivals,
    @Measure(
            meaning = "mites that arrive in June and July where many colonies stand around",
            value = 5.22,
            unit = "mites/day",
            min = 0,
            max = 1000,
            tag = DERIVED,
            source =
                "geometric middle of 2.5 and 10.9, July to November, Frey & Rosenkranz 2014; 1.6"
                    + " to 13.7 from June, middle 4.7, Greatti et al. 1992")
        double denseArrivals,
    @Measure(
            meaning =
                "times as many mites that arrive from August to November, few colonies or many",
            value = 2,
            unit = "1",
            min = 1,
            max = 100,
            tag = DERIVED,
            source =
                "derived from Frey & Rosenkranz 2014; held against field washes of autumn, which"
                    + " are forecast better with it")
        double lateArrivals) {

  /** Checks every component against its range. */
  public Assumptions {
    Measures.checkAll(Assumptions.class, beesPerFrame, sparseArrivals, denseArrivals, lateArrivals);
  }

  /** {@return the figures that studies use} */
  public static Assumptions usual() {
    return Measures.build(Assumptions.class, Map.of());
  }
}
