package broodtide.wash;

import broodtide.measure.OutOfRange;
import broodtide.measure.Tag;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * Treatment thresholds through the year, as one source gives them. On days that the source does not
 * speak of there is none.
 *
 * @param name short name in files, lower case with hyphens: author or body, and year
 * @param title one line that says whose thresholds these are
 * @param region where they were found, in general words
 * @param source citation
 * @param tag how they are known
 * @param caution what to mind when it is chosen, in sentences; empty for nothing
 * @param perBees the bees that counts below are per, for example 100 or 300
 * @param thresholds at least one; no two hold on the same day
 */
public record ThresholdSet(
    String name,
    String title,
    String region,
    String source,
    Tag tag,
    Optional<String> caution,
    int perBees,
    List<Threshold> thresholds) {
  private static final String NAME = "[a-z0-9]+(-[a-z0-9]+)*";
  private static final String GIVEN = "\\d+(\\.\\d+)?(/\\d+)?";
  private static final int LEAP_YEAR = 2000;

  /**
   * Checks names, days and ranges.
   *
   * @throws OutOfRange when a name or figure cannot be, or two thresholds hold on the same day
   */
  public ThresholdSet {
    if (!name.matches(NAME) && !name.matches(GIVEN)) {
      throw new OutOfRange("name", '"' + name + '"', "lower-case letters, digits and hyphens");
    }
    OutOfRange.check("perBees", perBees, 1, Wash.MOST_BEES, "bees");
    if (thresholds.isEmpty()) {
      throw new OutOfRange("thresholds", "empty", "at least one threshold");
    }
    thresholds = List.copyOf(thresholds);
    for (int i = 0; i < thresholds.size(); i++) {
      for (int k = 0; k < i; k++) {
        checkApart(thresholds.get(k), thresholds.get(i));
      }
    }
  }

  /**
   * {@return one threshold for every day of the year, as a beekeeper names it}
   *
   * @param name the figure as it was written, for example {@code 9/300}
   * @param mites mites, 0.01 to 1,000
   * @param perBees the bees that they are per
   */
  public static ThresholdSet given(String name, double mites, int perBees) {
    return new ThresholdSet(
        name,
        "a figure of the beekeeper's own",
        "any place",
        "given with the command or the study",
        Tag.CHOICE,
        Optional.empty(),
        perBees,
        List.of(new Threshold(null, null, mites, null, null, null)));
  }

  /** {@return whether it is a figure that a beekeeper named in place of a set} */
  public boolean isGiven() {
    return name.matches(GIVEN);
  }

  /** {@return whose threshold it is, as it stands in a sentence: {@code in set "name"}} */
  public String where() {
    return isGiven() ? "as given (" + name + ")" : "in set \"" + name + "\"";
  }

  /**
   * {@return the threshold on a day, when the source has one}
   *
   * @param stage the part of the year that the day lies in
   * @param day the day
   * @param southern whether the place lies south of the equator, where days are half a year later
   */
  public Optional<Threshold> on(Stage stage, LocalDate day, boolean southern) {
    return thresholds.stream().filter(t -> t.holds(stage, day, southern)).findFirst();
  }

  /**
   * {@return the threshold on a day in mites per 100 bees, when the source has one}
   *
   * @param stage the part of the year that the day lies in
   * @param day the day
   * @param southern whether the place lies south of the equator
   */
  public Optional<Double> perHundred(Stage stage, LocalDate day, boolean southern) {
    return on(stage, day, southern).map(t -> t.mites() * 100 / perBees);
  }

  /**
   * {@return the mites that fall on a board in a day above which the source advises to act, on a
   * day of which it says so}
   *
   * @param stage the part of the year that the day lies in
   * @param day the day
   * @param southern whether the place lies south of the equator
   */
  public Optional<Double> dailyFall(Stage stage, LocalDate day, boolean southern) {
    return on(stage, day, southern).flatMap(t -> Optional.ofNullable(t.fall()));
  }

  private static void checkApart(Threshold a, Threshold b) {
    boolean same = a.stage() == b.stage() && a.days() == null && b.days() == null;
    boolean mixed = (a.days() == null) != (b.days() == null);
    boolean always = a.when().equals("any day") || b.when().equals("any day");
    if (same) {
      throw new OutOfRange("thresholds", a.when() + " twice", "each stage once");
    }
    if (mixed || always || overlap(a, b)) {
      throw new OutOfRange(
          "thresholds",
          a.when() + " and " + b.when(),
          "thresholds that never hold on the same day: all by stage, or all by days");
    }
  }

  private static boolean overlap(Threshold a, Threshold b) {
    LocalDate first = LocalDate.of(LEAP_YEAR, 1, 1);
    return a.days() != null
        && b.days() != null
        && first
            .datesUntil(first.plusYears(1))
            .anyMatch(d -> a.days().holds(d) && b.days().holds(d));
  }
}
