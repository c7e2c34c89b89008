package broodtide.wash;

import broodtide.measure.Tag;

/**
 * Where in the hive the bees were taken, and how their mites per bee stand to the mean of all adult
 * bees of the colony. Bees of the brood nest carry about twice the mites of bees of the honey area
 * (Calderone &amp; Turcotte 1998); with half of the adults on either, that is 4/3 and 2/3 of the
 * mean.
 */
public enum Frame {
  /** A frame from the middle of the brood nest. */
  BROOD_CENTRE(
      "brood-centre",
      4.0 / 3,
      0.25,
      Tag.DERIVED,
      "twice the honey area, Calderone & Turcotte 1998, half of the adults on either; sd 0.25 is a"
          + " choice"),
  /** A frame from the edge of the brood nest. */
  BROOD_EDGE(
      "brood-edge",
      7.0 / 6,
      0.25,
      Tag.CHOICE,
      "half-way between the brood nest's centre and the mean of the colony; mean and sd are"
          + " choices"),
  /** A frame of honey, away from brood. */
  HONEY(
      "honey",
      2.0 / 3,
      0.15,
      Tag.DERIVED,
      "half of the brood nest, Calderone & Turcotte 1998, half of the adults on either; sd 0.15 is"
          + " a choice"),
  /** Bees of several frames together, or not said. */
  MIXED("mixed", 1, 0.2, Tag.CHOICE, "the mean of the colony by definition; sd 0.2 is a choice");

  private final String id;
  private final Factor factor;

  Frame(String id, double mean, double sd, Tag tag, String source) {
    this.id = id;
    this.factor = new Factor(mean, sd, tag, source);
  }

  /** {@return the name in files: lower case with hyphens} */
  public String id() {
    return id;
  }

  /** {@return mites per bee here over the mean of the colony's adult bees} */
  public Factor factor() {
    return factor;
  }
}
