package broodtide.wash;

import broodtide.measure.Tag;

/** How the mites were got off the bees, and the share of them that the method finds. */
public enum WashMethod {
  /** Alcohol, shaken for about a minute, poured off once. */
  ALCOHOL(
      "alcohol",
      0.90,
      0.05,
      Tag.MEMORY,
      "one 1-minute shake finds about 90 %, from memory; sd 0.05 is a choice"),
  /** Alcohol, shaken and rinsed three times. */
  ALCOHOL_THREE_RINSES(
      "alcohol-three-rinses",
      0.987,
      0.01,
      Tag.DATA,
      "98.7 % with three rinses, Aurell, Wall, Bruckner & Williams 2024, open data; sd 0.01 is a"
          + " choice"),
  /** Water with washing-up liquid, shaken for about a minute. */
  SOAPY_WATER(
      "soapy-water",
      0.90,
      0.06,
      Tag.CHOICE,
      "taken as good as alcohol, a little less sure; mean and sd are choices"),
  /** Powdered sugar, rolled and shaken out through a mesh. */
  POWDERED_SUGAR(
      "powdered-sugar",
      0.84,
      0.07,
      Tag.CHOICE,
      "middle of 75 % (from memory) and 92.9 +- 5.5 % (Macedo, Wu & Ellis 2002); sd 0.07 is a"
          + " choice that spans them"),
  /** Carbon dioxide, then shaken. */
  CARBON_DIOXIDE(
      "carbon-dioxide",
      0.70,
      0.15,
      Tag.CHOICE,
      "finds fewer than a sugar roll of the same bees (Bava et al. 2022, Vet. Sci. 9:354); mean and"
          + " sd are choices, no share was seen");

  private final String id;
  private final Factor recovery;

  WashMethod(String id, double mean, double sd, Tag tag, String source) {
    this.id = id;
    this.recovery = new Factor(mean, sd, tag, source);
  }

  /** {@return the name in files: lower case with hyphens} */
  public String id() {
    return id;
  }

  /** {@return share of the mites on the bees that is found, 0 to 1} */
  public Factor recovery() {
    return recovery;
  }
}
