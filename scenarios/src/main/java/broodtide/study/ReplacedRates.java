package broodtide.study;

import java.util.Map;
import java.util.Optional;

/** Rates that studies could set once, and what took their place. */
public final class ReplacedRates {
  private static final String MITE_DEATH =
      "mites on bees now die with their bees; the field that says how far is \"deathLink\" of"
          + " \"mites\"";

  private static final String BURDEN =
      "mites no longer shorten the life of the bees that carry them; those that come out of cells"
          + " infect adults: set \"adultInfections\" of \"bees\" instead";

  /** By form and field. */
  private static final Map<String, String> ANSWERS =
      Map.of(
          "bees.mitesOnSummerBees", BURDEN,
          "bees.mitesOnWinterBees", BURDEN,
          "bees.harm",
              "the factor on the deaths of bees that emerge overtly infected is now called"
                  + " \"overtDeath\"",
          "bees.winterDeath",
              "the death rate of winter bees is now a field of the climate, \"winterDeath\"; write"
                  + " the climate out to change it",
          "mites.deathWithBrood", MITE_DEATH,
          "mites.deathBroodless", MITE_DEATH,
          "mites.broodForSummerDeath", MITE_DEATH);

  private ReplacedRates() {}

  /**
   * What to say to a field that was replaced.
   *
   * @param form name of the form in which the field was given
   * @param field its name
   */
  static Optional<String> answer(String form, String field) {
    return Optional.ofNullable(ANSWERS.get(form + "." + field))
        .map(answer -> "there is no such field any more: " + answer);
  }
}
