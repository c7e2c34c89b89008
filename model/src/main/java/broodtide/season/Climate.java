package broodtide.season;

import static broodtide.measure.Tag.CHOICE;

import broodtide.measure.Measure;
import broodtide.measure.Measures;
import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.util.List;

/**
 * The year of a colony as a place sets it: how much the queen could lay, when drones are reared,
 * which bees become winter bees, when these leave in spring, how warm the days are, and when honey
 * supers usually stand.
 *
 * @param name short name, for example {@code cool-maritime}
 * @param title one line for people
 * @param laying laying potential, eggs per day of an average queen in a colony without limits on
 *     nursing, 0 to 4,000
 * @param droneShare share of eggs laid in drone cells, 0 to 0.5
 * @param winterShare share of emerging workers that become long-lived winter bees, 0 to 1
 * @param springRelease how far winter bees are called to work, 0 (none) to 1 (all, at the rate of
 *     the bees' record)
 * @param winterDeath death rate of winter bees, 1/day
 * @param warmth mean of the daily highs, degrees Celsius, -60 to 60
 * @param supers when supers are usually on the hive
 * @param winterBees when the brood that will winter is reared
 * @param southern whether the year is already shifted to the southern hemisphere
 * @param sources where the curves come from; each line names a source or says "choice"
 * @param recorded daily highs of single days, which hold there instead of the curve's
 */
public record Climate(
    String name,
    String title,
    Curve laying,
    Curve droneShare,
    Curve winterShare,
    Curve springRelease,
    @Measure(
            meaning = "death rate of winter bees",
            value = Climate.USUAL_WINTER_DEATH,
            unit = "1/day",
            min = 0.0005,
            max = 0.05,
            tag = CHOICE,
            source =
                "30 % fewer bees from the end of October to early March in 3,258"
                    + " colonies (Liebig 2024, imker-horgen.ch). 0.0045 in cold winters: half"
                    + " of the bees (Aumeier & Liebig 2019), March colonies in Manitoba"
                    + " (Harris 2010)")
        double winterDeath,
    Curve warmth,
    YearSpan supers,
    YearSpan winterBees,
    boolean southern,
    List<String> sources,
    DailyHighs recorded) {
  /** Death rate of winter bees where a climate does not say, 1/day. */
  public static final double USUAL_WINTER_DEATH = 0.0025;

  /**
   * A climate of which no single day is recorded.
   *
   * @param name short name
   * @param title one line for people
   * @param laying laying potential, eggs/day
   * @param droneShare share of eggs laid in drone cells
   * @param winterShare share of emerging workers that become winter bees
   * @param springRelease how far winter bees are called to work
   * @param winterDeath death rate of winter bees, 1/day
   * @param warmth mean of the daily highs, degrees Celsius
   * @param supers when supers are usually on the hive
   * @param winterBees when the brood that will winter is reared
   * @param southern whether the year is already shifted to the southern hemisphere
   * @param sources where the curves come from
   */
  public Climate(
      String name,
      String title,
      Curve laying,
      Curve droneShare,
      Curve winterShare,
      Curve springRelease,
      double winterDeath,
      Curve warmth,
      YearSpan supers,
      YearSpan winterBees,
      boolean southern,
      List<String> sources) {
    this(
        name,
        title,
        laying,
        droneShare,
        winterShare,
        springRelease,
        winterDeath,
        warmth,
        supers,
        winterBees,
        southern,
        sources,
        DailyHighs.NONE);
  }

  /** Checks that every knot lies in its range. */
  public Climate {
    sources = List.copyOf(sources);
    checkKnots("laying", laying, 0, 4000, "eggs/day");
    checkKnots("droneShare", droneShare, 0, 0.5, "1");
    checkKnots("winterShare", winterShare, 0, 1, "1");
    checkKnots("springRelease", springRelease, 0, 1, "1");
    Measures.check(Climate.class, "winterDeath", winterDeath);
    checkKnots("warmth", warmth, -60, 60, "degrees Celsius");
    if (laying.peak() <= 0) {
      throw new OutOfRange("laying", "0 all year", "above 0 on at least one day (eggs/day)");
    }
  }

  /**
   * {@return the same climate with a beekeeper's own dates}
   *
   * @param ownSupers when honey supers stand
   * @param ownWinterBees when the brood that will winter is reared
   */
  public Climate with(YearSpan ownSupers, YearSpan ownWinterBees) {
    return with(ownSupers, ownWinterBees, recorded);
  }

  /**
   * {@return the same climate with a beekeeper's own highs of single days}
   *
   * @param highs they hold on their days; on all others the curve does
   */
  public Climate with(DailyHighs highs) {
    return with(supers, winterBees, highs);
  }

  private Climate with(YearSpan ownSupers, YearSpan ownWinterBees, DailyHighs highs) {
    return new Climate(
        name,
        title,
        laying,
        droneShare,
        winterShare,
        springRelease,
        winterDeath,
        warmth,
        ownSupers,
        ownWinterBees,
        southern,
        sources,
        highs);
  }

  /**
   * {@return the daily high of a day, degrees Celsius: as recorded, or else the usual one}
   *
   * @param day the day
   */
  public double high(LocalDate day) {
    return recorded.on(day).orElseGet(() -> warmth.at(day));
  }

  /**
   * {@return the daily highs of consecutive days, degrees Celsius}
   *
   * @param from the first day
   * @param days how many, 0 or more
   */
  public double[] highs(LocalDate from, int days) {
    double[] out = warmth.daily(from, days);
    for (int i = 0; i < days; i++) {
      out[i] = recorded.on(from.plusDays(i)).orElse(out[i]);
    }
    return out;
  }

  /** {@return the same climate half a year later, for a place south of the equator} */
  public Climate inSouth() {
    if (southern) {
      return this;
    }
    return new Climate(
        name,
        title + " (southern hemisphere)",
        laying.southern(),
        droneShare.southern(),
        winterShare.southern(),
        springRelease.southern(),
        winterDeath,
        warmth.southern(),
        supers.southern(),
        winterBees.southern(),
        true,
        sources,
        recorded);
  }

  private static void checkKnots(String field, Curve curve, double min, double max, String unit) {
    for (Curve.Knot knot : curve.knots()) {
      OutOfRange.check(field + " on " + knot.day(), knot.value(), min, max, unit);
    }
  }
}
