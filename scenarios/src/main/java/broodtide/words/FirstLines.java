package broodtide.words;

import broodtide.assessment.Comparison;
import broodtide.assessment.Decision;
import broodtide.assessment.PlanRun;
import broodtide.assessment.PlanSummary;
import broodtide.assessment.QuantileSummary;
import broodtide.engine.Quantity;
import broodtide.engine.SpringLow;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The answer to "what now?" for one colony in at most five short lines: where it stands, what
 * happens if the beekeeper waits, what helps most and when, what speaks against that, and how sure
 * all this is. A line of usual plans fits into {@value #WIDTH} columns.
 */
public final class FirstLines {
  /** Columns of a terminal that has told no width. */
  private static final int WIDTH = 80;

  /** What stands before the reason in an objection: the control and its day. */
  private static final Pattern SUBJECT = Pattern.compile("^.*? \\d{4}-\\d\\d-\\d\\d: ");

  private final Comparison comparison;
  private final Answer answer;
  private final Decision decision;

  private FirstLines(Comparison comparison) {
    this.comparison = comparison;
    this.answer = new Answer(comparison);
    this.decision = comparison.decision();
  }

  /**
   * {@return at most five lines, in that order; without plans to compare, those of the colony
   * alone}
   *
   * @param comparison the plans that were played
   */
  public static List<String> of(Comparison comparison) {
    FirstLines lines = new FirstLines(comparison);
    List<String> out = new ArrayList<>();
    out.add(lines.stands());
    if (comparison.runs().size() > 1) {
      out.add(lines.waiting());
      out.add(lines.best());
      lines.against().ifPresent(out::add);
      lines.sure("plans marked = tie").ifPresent(out::add);
    } else {
      out.add(lines.alone());
      lines.overThreshold().ifPresent(out::add);
    }
    return out;
  }

  /**
   * {@return at most five lines of which the first answers the question of a command, and the
   * others say the rest in short}
   *
   * @param first the answer to the question of the command
   * @param comparison the usual plans
   */
  public static List<String> after(String first, Comparison comparison) {
    FirstLines lines = new FirstLines(comparison);
    List<String> out = new ArrayList<>();
    out.add(first);
    out.add(lines.nowAndThen());
    if (comparison.runs().size() > 1) {
      out.add(lines.best());
      lines.against().ifPresent(out::add);
      lines.sure("'compare' shows ties").ifPresent(out::add);
    }
    return out;
  }

  /**
   * {@return what stands against the best plan in its calendar where the lines say it in full;
   * empty where nothing does or the plan is more than one control}
   *
   * @param comparison the plans that were played
   */
  public static Optional<String> objection(Comparison comparison) {
    if (comparison.runs().size() < 2) {
      return Optional.empty();
    }
    PlanRun best = new Answer(comparison).best();
    return best.plan().controls().size() == 1
        ? best.objections().stream().findFirst()
        : Optional.empty();
  }

  private String stands() {
    String here =
        ": "
            + about(here().median())
            + " mites per 100 bees (90 % interval "
            + Plain.levels(here().q05(), here().q95())
            + ").";
    return shortest("On " + Plain.day(now()) + here, Plain.shortDay(now()) + here);
  }

  private String waiting() {
    String then = then();
    if (lostByThen()) {
      return "If you wait: " + then + ".";
    }
    Optional<Double> threshold = comparison.colony().thresholdOn(answer.day());
    if (threshold.isEmpty()) {
      return "If you wait: " + then + " (90 % interval " + range() + ").";
    }
    String over =
        "; treatment threshold "
            + Answer.thresholdWords(comparison.colony().thresholds(), threshold.get())
            + ".";
    return shortest("If you wait: " + then + over, "If you wait: " + thenInShort() + over);
  }

  /** The second line where no plan stands beside waiting. */
  private String alone() {
    String plan = answer.first().plan().controls().isEmpty() ? "If you wait" : "With this plan";
    return plan + ": " + then() + (lostByThen() ? "." : " (90 % interval " + range() + ").");
  }

  private Optional<String> overThreshold() {
    return lostByThen()
        ? Optional.empty()
        : comparison
            .colony()
            .thresholdOn(answer.day())
            .map(
                t ->
                    "That is over the treatment threshold of "
                        + Answer.thresholdWords(comparison.colony().thresholds(), t)
                        + " "
                        + Odds.seasons(answer.first().chanceOver(t, answer.day()))
                        + ".");
  }

  private String nowAndThen() {
    String here = about(here().median()) + " mites per 100 bees";
    return shortest(
        "On " + Plain.day(now()) + ": " + here + "; if you wait, " + then() + ".",
        Plain.shortDay(now()) + ": " + here + "; if you wait, " + thenInShort() + ".");
  }

  private String best() {
    PlanSummary best = decision.best();
    String judged =
        decision.knowsWinterLoss()
            ? "winter loss"
            : decision.winterLossTold()
                ? "chance of loss"
                : "share of winter-bee brood with a mite";
    String waiting = figure(decision.waiting());
    if (best.waits()) {
      return "No plan clearly helps more than waiting: " + judged + " is " + waiting + ".";
    }
    String name = best.plan().name();
    // A plan with fewer treatments is named before one that does as well, whose figure may be
    // lower.
    boolean alone = decision.tied().isEmpty();
    String lowest =
        alone ? "Lowest " + judged + " of the plans: " : "Among the lowest in " + judged + ": ";
    String then = "; " + figure(best) + ", ";
    LocalDate from = best.from().orElseThrow();
    String soon = name + ", " + Plain.shortDay(from) + then;
    return shortest(
        lowest + name + ", from " + Plain.day(from) + then + "if you wait " + waiting + ".",
        lowest + soon + "if you wait " + waiting + ".",
        lowest + soon + "wait " + waiting + ".",
        (alone ? "Lowest of the plans: " : "Among the lowest: ") + soon + "wait " + waiting + ".");
  }

  private Optional<String> against() {
    return answer.best().objections().stream()
        .findFirst()
        .map(words -> "Against it: " + SUBJECT.matcher(words).replaceFirst(""))
        .map(words -> shortest(words + ".", words.replaceFirst(" \\([^)]*\\)$", "") + "."));
  }

  /** The range of the loss over yards and winters, which no wash narrows, and plans as good. */
  private Optional<String> sure(String tied) {
    String more = decision.tied().isEmpty() ? "" : "; " + tied;
    Optional<SpringLow> low = answer.best().springLow();
    if (low.isPresent()) {
      QuantileSummary loss = answer.best().lossByYard(low.get().day());
      String range = Digits.chances(loss.q05(), loss.q95());
      return Optional.of(
          shortest(
              "How sure: winter loss is " + range + " in 90 % of yards and winters" + more + ".",
              "How sure: winter loss is " + range + " in 90 % of yards" + more + ".",
              "How sure: loss is " + range + " in 90 % of yards" + more + "."));
    }
    if (!decision.winterLossTold() && comparison.colony().raisesWinterBees()) {
      QuantileSummary brood = answer.best().winterBrood();
      return Optional.of(
          shortest(
              "How sure: that is "
                  + Digits.chances(brood.q05(), brood.q95())
                  + " in 90 % of simulated colonies"
                  + more
                  + ".",
              "How sure: "
                  + Digits.chances(brood.q05(), brood.q95())
                  + " in 90 % of colonies"
                  + more
                  + "."));
    }
    return more.isEmpty() ? Optional.empty() : Optional.of("How sure: " + tied + ".");
  }

  private LocalDate now() {
    return comparison.colony().now();
  }

  private QuantileSummary here() {
    return answer.first().on(Quantity.INFESTATION, now());
  }

  private boolean lostByThen() {
    return answer.first().shareLost(answer.day()) > 0.5;
  }

  private String then() {
    return then(Plain.day(answer.day()));
  }

  private String thenInShort() {
    return then(Plain.shortDay(answer.day()));
  }

  private String then(String day) {
    double lost = answer.first().shareLost(answer.day());
    return lostByThen()
        ? "lost by " + day + " " + Odds.seasons(lost)
        : about(answer.on(answer.first()).median()) + " on " + day;
  }

  private String range() {
    QuantileSummary on = answer.on(answer.first());
    return Plain.levels(on.q05(), on.q95());
  }

  private String figure(PlanSummary s) {
    return decision.winterLossTold()
        ? Digits.chance(s.winterLoss())
        : Digits.percent(s.infestedWinterBrood().orElse(0));
  }

  private static String about(double perHundred) {
    return Answer.about(perHundred);
  }

  /** The first that fits into a line; the last where none does. */
  private static String shortest(String... words) {
    for (String w : words) {
      if (w.length() <= WIDTH) {
        return w;
      }
    }
    return words[words.length - 1];
  }
}
