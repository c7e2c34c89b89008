package broodtide.words;

import broodtide.assessment.Decision;
import broodtide.assessment.PlanRanking;
import broodtide.assessment.PlanSummary;
import java.util.ArrayList;
import java.util.List;

/** The decision for a colony in a sentence or two, the same in every command. */
public final class DecisionWords {
  private DecisionWords() {}

  /**
   * {@return which plan helps most and what waiting costs; empty where no plans were laid}
   *
   * @param d the decision
   */
  public static List<String> of(Decision d) {
    List<String> out = new ArrayList<>();
    d.ranking().ifPresent(ranking -> out.addAll(sentences(d, ranking)));
    return out;
  }

  private static List<String> sentences(Decision d, PlanRanking ranking) {
    PlanSummary best = ranking.best();
    List<String> out = new ArrayList<>();
    String judged =
        d.winterLossTold() ? "the chance of losing the colony" : "worker brood with a mite";
    String loss = figure(d, best);
    String waiting = figure(d, d.waiting());
    out.add(
        best.waits()
            ? "No plan clearly helps more than waiting: "
                + judged
                + " is "
                + waiting
                + " if you wait."
            : "Best plan: "
                + best.plan().name()
                + best.from().map(day -> ", from " + Plain.day(day)).orElse("")
                + ". With it "
                + judged
                + " is "
                + loss
                + ", against "
                + waiting
                + " if you wait.");
    if (!d.tied().isEmpty()) {
      out.add(
          "There is no clear difference from "
              + String.join(", ", d.tied())
              + (d.tied().size() == 1 ? "." : "; choose by label, weather and effort."));
    }
    return out;
  }

  private static String figure(Decision d, PlanSummary s) {
    return d.winterLossTold()
        ? Digits.chance(s.winterLoss())
        : Digits.percent(s.infestedWinterBrood().orElse(0));
  }
}
