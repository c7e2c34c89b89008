package broodtide.catalog;

import broodtide.measure.OutOfRange;
import broodtide.season.Climate;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What a beekeeper says of a place, and how well the shipped climates agree with it. Immutable.
 *
 * @param answers the answered questions, each as {@link ClimateQuestion#read} gives it; the others
 *     play no part
 * @param southern whether the place lies south of the equator
 */
public record ClimateAnswers(Map<ClimateQuestion, Double> answers, boolean southern) {
  /** Misfits that lie no further apart are as good as equal: one tolerance of one question. */
  private static final double NEARLY = 1;

  /** Copies the answers, in the order of the questions. */
  public ClimateAnswers {
    Map<ClimateQuestion, Double> sorted = new EnumMap<>(ClimateQuestion.class);
    sorted.putAll(answers);
    answers = Collections.unmodifiableMap(sorted);
  }

  /**
   * A climate beside the answers.
   *
   * @param climate the year, by the calendar of the place
   * @param misfit sum over the answers of (difference / tolerance) squared, 0 or more
   * @param differences of each answered question, as {@link ClimateQuestion#difference} gives it
   */
  public record Fit(Climate climate, double misfit, Map<ClimateQuestion, Double> differences) {
    /**
     * {@return whether the climate agrees with an answer, that is, lies within its tolerance}
     *
     * @param question an answered question
     * @throws OutOfRange when it was not answered
     */
    public boolean agrees(ClimateQuestion question) {
      Double difference = differences.get(question);
      if (difference == null) {
        throw new OutOfRange(question.id(), "no answer", question.expected());
      }
      return Math.abs(difference) <= question.tolerance();
    }

    /**
     * {@return whether another climate agrees with the answers as well, for all they can tell}
     *
     * @param other a climate beside the same answers
     */
    public boolean tiedWith(Fit other) {
      return Math.abs(other.misfit - misfit) <= NEARLY;
    }
  }

  /**
   * {@return all shipped climates, the one that agrees best first; at equal misfit in the order of
   * the shelf}
   *
   * @throws OutOfRange when nothing was answered
   */
  public List<Fit> ranked() {
    if (answers.isEmpty()) {
      throw new OutOfRange("answers", "none", "at least one answer");
    }
    return Catalog.CLIMATES.names().stream()
        .map(Catalog::climate)
        .map(c -> fit(southern ? c.inSouth() : c))
        .sorted(Comparator.comparingDouble(Fit::misfit))
        .toList();
  }

  private Fit fit(Climate climate) {
    Map<ClimateQuestion, Double> differences = new EnumMap<>(ClimateQuestion.class);
    answers.forEach(
        (question, answer) -> differences.put(question, question.difference(answer, climate)));
    double misfit = 0;
    for (Map.Entry<ClimateQuestion, Double> e : differences.entrySet()) {
      double off = e.getValue() / e.getKey().tolerance();
      misfit += off * off;
    }
    return new Fit(climate, misfit, differences);
  }
}
