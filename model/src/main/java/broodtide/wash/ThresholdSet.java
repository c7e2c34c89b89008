package broodtide.wash;

import broodtide.measure.OutOfRange;
import broodtide.measure.Tag;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Thresholds for the stages of a year, as one source gives them. Stages that the source does not
 * speak of have none.
 *
 * @param name short name in files, lower case with hyphens
 * @param title one line that says whose thresholds these are
 * @param region where they were found, in general words
 * @param source citation, or that there is none
 * @param tag how they are known
 * @param perBees the bees that counts below are per, 100 or 300
 * @param thresholds the stages' thresholds, at least one, each stage once
 * @param signs what counts tell at any stage, from the lowest up; may be empty
 */
public record ThresholdSet(
    String name,
    String title,
    String region,
    String source,
    Tag tag,
    int perBees,
    List<Threshold> thresholds,
    List<Band> signs) {
  /** Checks names, stages and ranges. */
  public ThresholdSet {
    if (!name.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      throw new OutOfRange("name", '"' + name + '"', "lower-case letters, digits and hyphens");
    }
    OutOfRange.check("perBees", perBees, 1, Wash.MOST_BEES, "bees");
    if (thresholds.isEmpty()) {
      throw new OutOfRange("thresholds", "empty", "at least one stage");
    }
    Set<Stage> seen = EnumSet.noneOf(Stage.class);
    for (Threshold threshold : thresholds) {
      if (!seen.add(threshold.stage())) {
        throw new OutOfRange("thresholds", threshold.stage().id() + " twice", "each stage once");
      }
    }
    thresholds = List.copyOf(thresholds);
    signs = Band.inOrder(signs);
  }

  /**
   * {@return the threshold of a stage, when the source has one}
   *
   * @param stage the part of the year
   */
  public Optional<Threshold> at(Stage stage) {
    return thresholds.stream().filter(l -> l.stage() == stage).findFirst();
  }

  /**
   * {@return the threshold of a stage in mites per 100 bees, when the source has one}
   *
   * @param stage the part of the year
   */
  public Optional<Double> perHundred(Stage stage) {
    return at(stage).map(l -> l.mites() * 100 / perBees);
  }

  /**
   * {@return the words for a rate at a stage, when the source has any}
   *
   * @param stage the part of the year
   * @param perHundred mites per 100 bees, 0 or more
   */
  public Optional<String> words(Stage stage, double perHundred) {
    return at(stage).flatMap(l -> l.bandAt(perHundred * perBees / 100)).map(Band::words);
  }

  /**
   * {@return what a rate tells at any stage, when the source says}
   *
   * @param perHundred mites per 100 bees, 0 or more
   */
  public Optional<String> sign(double perHundred) {
    return Band.at(signs, perHundred * perBees / 100).map(Band::words);
  }
}
