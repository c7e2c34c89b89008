package broodtide.words;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.PlanRun;
import broodtide.assessment.QuantileSummary;
import broodtide.engine.Quantity;
import broodtide.engine.SpringLow;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The answer to "what now?" for one colony in five short lines: where it stands, what waiting leads
 * to, what helps most and when, what speaks against that, and how sure all this is.
 */
public final class FirstLines {
  private FirstLines() {}

  /**
   * {@return at most five lines, in that order; without plans to compare, those of the colony
   * alone}
   *
   * @param comparison the plans that were played
   */
  public static List<String> of(Comparison comparison) {
    Answer answer = new Answer(comparison);
    List<String> out = new ArrayList<>();
    out.add(stands(comparison));
    out.add(answer.sentence());
    if (comparison.runs().size() > 1) {
      out.add(String.join(" ", DecisionWords.of(comparison.decision())));
      objection(comparison).ifPresent(o -> out.add("Against this plan: " + o + "."));
    }
    sure(answer).ifPresent(out::add);
    return out;
  }

  /** The treatment threshold is named here only where that of the next line is another. */
  private static String stands(Comparison comparison) {
    ColonyCase c = comparison.colony();
    QuantileSummary now = comparison.runs().get(0).on(Quantity.INFESTATION, c.now());
    return "On "
        + Plain.day(c.now())
        + " the colony has about "
        + Plain.levelWithRange(now)
        + "."
        + c.stages()
            .thresholdOn(c.thresholds(), c.now())
            .filter(t -> !c.thresholdOn(comparison.answerDay()).equals(Optional.of(t)))
            .map(
                t ->
                    " The treatment threshold is " + Answer.thresholdWords(c.thresholds(), t) + ".")
            .orElse("");
  }

  /**
   * {@return what stands against the best plan in its calendar, the first thing only; empty where
   * nothing does or one plan alone was played}
   *
   * @param comparison the plans that were played
   */
  public static Optional<String> objection(Comparison comparison) {
    return comparison.runs().size() > 1
        ? new Answer(comparison).best().objections().stream().findFirst()
        : Optional.empty();
  }

  /** The range of the loss over yards and winters, which no wash narrows. */
  private static Optional<String> sure(Answer answer) {
    Optional<SpringLow> low = answer.best().springLow();
    return low.map(
        l -> {
          PlanRun best = answer.best();
          QuantileSummary loss = best.lossByYard(l.day());
          return "How sure: yards and winters differ; with "
              + best.plan().name()
              + " winter loss is "
              + Digits.chance(loss.q05())
              + " to "
              + Digits.chance(loss.q95())
              + " in 90 % of them.";
        });
  }
}
