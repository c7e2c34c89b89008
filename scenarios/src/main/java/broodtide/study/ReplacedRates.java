package broodtide.study;

import java.util.Map;
import java.util.stream.Collectors;

/** Rates that studies could set once, and what took their place. */
final class ReplacedRates {
  private static final String MITE_DEATH =
      "mites on bees now die with their bees; the field that says how far is \"deathLink\" of"
          + " \"mites\"";

  private static final String BURDEN =
      "mites no longer shorten the life of the bees that carry them; those that come out of cells"
          + " infect adults: set \"adultInfections\" of \"bees\" instead";

  /** What to say to replaced rates of bees, by field. */
  static final Map<String, String> BEES =
      gone(
          Map.of(
              "mitesOnSummerBees",
              BURDEN,
              "mitesOnWinterBees",
              BURDEN,
              "harm",
              "the factor on the deaths of bees that emerge overtly infected is now called"
                  + " \"overtDeath\"",
              "winterDeath",
              "the death rate of winter bees is now a field of the climate, \"winterDeath\"; write"
                  + " the climate out to change it"));

  /** What to say to replaced rates of mites, by field. */
  static final Map<String, String> MITES =
      gone(
          Map.of(
              "deathWithBrood", MITE_DEATH,
              "deathBroodless", MITE_DEATH,
              "broodForSummerDeath", MITE_DEATH));

  private ReplacedRates() {}

  private static Map<String, String> gone(Map<String, String> answers) {
    return answers.entrySet().stream()
        .collect(
            Collectors.toUnmodifiableMap(
                Map.Entry::getKey, e -> "there is no such field any more: " + e.getValue()));
  }
}
