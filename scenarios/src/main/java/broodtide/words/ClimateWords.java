package broodtide.words;

import broodtide.assessment.ClimateEvidence;
import broodtide.catalog.ClimateAnswers;
import broodtide.catalog.ClimateAnswers.Fit;
import broodtide.catalog.ClimateQuestion;
import broodtide.season.Climate;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** What speaks for a climate, and against it. */
public final class ClimateWords {
  private ClimateWords() {}

  /**
   * {@return which climate the answers lead to, what speaks for it and against it, and which others
   * are as good; a sentence each}
   *
   * @param ranked as {@link ClimateAnswers#ranked} gives them
   */
  public static List<String> chosen(List<Fit> ranked) {
    Fit best = ranked.get(0);
    List<String> as =
        ranked.stream().skip(1).filter(best::tiedWith).map(f -> f.climate().name()).toList();
    return Stream.of(
            Stream.of("Closest climate: " + best.climate().name() + ". " + told(best.climate())),
            reasons(best).stream(),
            as.isEmpty()
                ? Stream.<String>empty()
                : Stream.of(
                    "Your answers fit " + String.join(" and ", as) + " about as well: try each."))
        .flatMap(s -> s)
        .toList();
  }

  /**
   * {@return of each answered question whether a climate agrees, and how far it is off if not}
   *
   * @param fit a climate beside the answers
   */
  public static List<String> reasons(Fit fit) {
    return fit.differences().entrySet().stream().map(e -> reason(fit, e)).toList();
  }

  /**
   * {@return that the washes speak for another climate than the one that was chosen}
   *
   * @param better the climate that explains them far better
   * @param chosen name of the climate that was chosen
   */
  public static String farBetter(ClimateEvidence better, String chosen) {
    return "Your washes fit the climate "
        + better.climate()
        + " far better than "
        + chosen
        + ". Check where your hives stand.";
  }

  /** The title without the name that stands before its colon. */
  private static String told(Climate climate) {
    String title = climate.title();
    return Plain.capital(title.substring(title.indexOf(':') + 1).strip()) + ".";
  }

  private static String reason(Fit fit, Map.Entry<ClimateQuestion, Double> off) {
    ClimateQuestion question = off.getKey();
    String subject =
        switch (question) {
          case WINTER_BEES -> "Start of winter bees";
          case MIDWINTER_BROOD -> "Brood in midwinter";
          case SUPERS_OFF -> "Supers off";
          case DRONE_BROOD -> "First drone brood";
          case SUMMER_HIGH -> "Summer afternoons";
        };
    return subject
        + ": "
        + (fit.agrees(question) ? "agrees" : apart(question, off.getValue()))
        + ".";
  }

  private static String apart(ClimateQuestion question, double difference) {
    boolean more = difference > 0;
    long size = Math.round(Math.abs(difference));
    return switch (question.kind()) {
      case DAY -> size + " days " + (more ? "later" : "earlier") + " in this climate than with you";
      case AMOUNT -> (more ? "more" : "less") + " in this climate than with you";
      case DEGREES ->
          size + " degrees " + (more ? "warmer" : "cooler") + " in this climate than with you";
    };
  }
}
