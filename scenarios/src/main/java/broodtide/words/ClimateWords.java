package broodtide.words;

import broodtide.catalog.ClimateAnswers;
import broodtide.catalog.ClimateAnswers.Fit;
import broodtide.catalog.ClimateQuestion;
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
            Stream.of(
                "Closest climate: " + best.climate().name() + ". " + best.climate().title() + "."),
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
