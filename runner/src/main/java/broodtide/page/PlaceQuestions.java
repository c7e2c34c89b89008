package broodtide.page;

import broodtide.catalog.ClimateAnswers;
import broodtide.catalog.ClimateQuestion;
import broodtide.measure.OutOfRange;
import broodtide.web.Refused;
import broodtide.words.ClimateWords;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The questions that lead to a climate, as the page asks them. */
final class PlaceQuestions {
  private PlaceQuestions() {}

  /** All questions, with the edge of the year that an answer moves. */
  static void write(ArrayNode into) {
    for (ClimateQuestion question : ClimateQuestion.values()) {
      into.addObject()
          .put("id", question.id())
          .put("text", question.text())
          .put("kind", question.kind().name())
          .put("moves", moves(question));
    }
  }

  private static String moves(ClimateQuestion question) {
    return switch (question) {
      case WINTER_BEES -> "Moves the first day of the winter bees.";
      case SUPERS_OFF -> "Moves the last day of the supers.";
      case MIDWINTER_BROOD, DRONE_BROOD, SUMMER_HIGH -> "Helps to choose the climate.";
    };
  }

  /**
   * What the answers lead to: the climate, and what speaks for it.
   *
   * @throws Refused when an answer is none
   */
  static ObjectNode answered(JsonNode body) {
    JsonNode answers = body.path("answers");
    Map<ClimateQuestion, Double> read = new EnumMap<>(ClimateQuestion.class);
    for (ClimateQuestion question : ClimateQuestion.values()) {
      String answer = answers.path(question.id()).asText();
      if (!answer.isBlank()) {
        try {
          read.put(question, question.read(answer));
        } catch (OutOfRange e) {
          throw Refused.bad(
              question.id()
                  + " has "
                  + Refused.quoted(answer)
                  + "; expected "
                  + question.expected());
        }
      }
    }
    ObjectNode out = JsonNodeFactory.instance.objectNode();
    ArrayNode sentences = out.putArray("sentences");
    if (!read.isEmpty()) {
      boolean south = body.path("south").asBoolean();
      List<ClimateAnswers.Fit> ranked = new ClimateAnswers(read, south).ranked();
      out.put("climate", ranked.get(0).climate().name());
      ClimateWords.chosen(ranked).forEach(sentences::add);
    }
    return out;
  }
}
