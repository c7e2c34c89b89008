package broodtide.wash;

import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One wash: mites counted in a sample of adult bees of one colony.
 *
 * @param date the day
 * @param colony the colony's name, not blank
 * @param mites mites found, 0 or more and at most the bees
 * @param bees bees in the sample, 1 to {@value #MOST_BEES}; empty when a half cup was not counted
 * @param method how the mites were got off
 * @param frame where the bees were taken
 * @param note the beekeeper's note, may be empty
 * @param framesOfBees frames covered with bees on the day, 0 to 100, when noted
 */
public record Wash(
    LocalDate date,
    String colony,
    int mites,
    OptionalInt bees,
    WashMethod method,
    Frame frame,
    String note,
    OptionalDouble framesOfBees) {
  /** Most bees that one wash may hold. */
  public static final int MOST_BEES = 10_000;

  /** Checks the counts; throws {@link OutOfRange} that names the field and what is allowed. */
  public Wash {
    if (colony.isBlank()) {
      throw new OutOfRange("colony", "blank", "a name");
    }
    if (bees.isPresent()) {
      OutOfRange.check("bees", bees.getAsInt(), 1, MOST_BEES, "bees");
    }
    int most = bees.orElse((int) HalfCup.usual().bees());
    if (mites < 0 || mites > most) {
      String bound = bees.isPresent() ? "the bees in the wash" : "the bees assumed in a half cup";
      throw new OutOfRange("mites", Integer.toString(mites), "0 to " + most + ", " + bound);
    }
    if (framesOfBees.isPresent()) {
      OutOfRange.check("frames_of_bees", framesOfBees.getAsDouble(), 0, 100, "frames");
    }
  }

  /**
   * {@return an alcohol wash of bees from mixed frames, counted, without a note}
   *
   * @param date the day
   * @param colony the colony's name, not blank
   * @param mites mites found, 0 or more and at most the bees
   * @param bees bees in the sample, 1 to {@value #MOST_BEES}
   */
  public static Wash of(LocalDate date, String colony, int mites, int bees) {
    return new Wash(
        date,
        colony,
        mites,
        OptionalInt.of(bees),
        WashMethod.ALCOHOL,
        Frame.MIXED,
        "",
        OptionalDouble.empty());
  }

  /**
   * {@return an alcohol wash of a half cup of bees from mixed frames, not counted, without a note}
   *
   * @param date the day
   * @param colony the colony's name, not blank
   * @param mites mites found, 0 or more and at most the bees
   */
  public static Wash ofHalfCup(LocalDate date, String colony, int mites) {
    return new Wash(
        date,
        colony,
        mites,
        OptionalInt.empty(),
        WashMethod.ALCOHOL,
        Frame.MIXED,
        "",
        OptionalDouble.empty());
  }

  /**
   * {@return whether the bees were not counted, so that {@link HalfCup#usual()} stands in for them}
   */
  public boolean beesAssumed() {
    return bees.isEmpty();
  }

  /** {@return bees counted, or those assumed in a half cup} */
  public double beesOrAssumed() {
    return bees.isPresent() ? bees.getAsInt() : HalfCup.usual().bees();
  }

  /** {@return mites found per 100 bees, not corrected for anything} */
  public double perHundred() {
    return 100 * mites / beesOrAssumed();
  }

  /**
   * {@return mites expected in this wash for each mite per adult bee of the colony: bees x recovery
   * x frame factor, at their means}
   */
  public double exposure() {
    return beesOrAssumed() * method.recovery().mean() * frame.factor().mean();
  }
}
