package broodtide.words;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.CrossingDays;
import broodtide.assessment.PlanRanking;
import broodtide.assessment.PlanRun;
import broodtide.assessment.QuantileSummary;
import broodtide.assessment.UsualPlans;
import broodtide.engine.Quantity;
import broodtide.engine.SpringLow;
import broodtide.engine.Survival;
import broodtide.fit.Agreement;
import broodtide.wash.ThresholdSet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The answer to "what happens, and what could be done?" for one colony, in sentences.
 *
 * @param comparison the plans; the first one is what the others are held against
 */
public record Answer(Comparison comparison) {
  /**
   * Chances below this are not spoken of: an ensemble of a few thousand cannot tell them from 0.
   */
  private static final double WORTH_SAYING = 0.005;

  /** Infestations of living colonies mislead where more than this share is dead. */
  private static final double DEATHS_TELL = 0.05;

  /** Bees of a half cup, in which a threshold is said too. */
  private static final int USUAL_WASH = 300;

  /** Mites still to come in are spoken of where without them there would be fewer than this. */
  private static final double ARRIVALS_TELL = 0.95;

  /**
   * {@return the day that the answer speaks of: when the winter bees have been raised, or the last
   * day looked at when that comes first or when there is one plan only}
   */
  public LocalDate day() {
    return comparison.answerDay();
  }

  /** {@return the plan that the others are held against} */
  public PlanRun first() {
    return comparison.runs().get(0);
  }

  /** {@return the plan that the decision names; the first one where only one was played} */
  public PlanRun best() {
    Optional<PlanRanking> ranking = comparison.decision().ranking();
    return comparison.runs().stream()
        .filter(run -> ranking.map(r -> r.best().plan().equals(run.plan())).orElse(true))
        .findFirst()
        .orElseThrow();
  }

  /**
   * {@return mites per 100 bees on the {@link #day}}
   *
   * @param run a plan that was played
   */
  public QuantileSummary on(PlanRun run) {
    return run.on(Quantity.INFESTATION, day());
  }

  /** {@return the answer in one sentence} */
  public String sentence() {
    return under(first()) + ", " + outlook(first()) + ".";
  }

  /** {@return a title for the chart: the first plan, and the one that leaves the fewest mites} */
  public String title() {
    String title = under(first()) + ", " + brief(first()) + " on " + Plain.day(day());
    PlanRun best = best();
    return best == first()
        ? title
        : title + "; with " + best.plan().name() + ", " + Plain.level(on(best).median());
  }

  /**
   * {@return what follows the answer: the threshold passed, the loss of the colony, the plan with
   * fewest}
   */
  public List<String> further() {
    List<String> out = new ArrayList<>();
    out.add(crossing());
    if (comparison.colony().hasThreshold() && threshold().isEmpty()) {
      out.add(noneThen());
    }
    arrivals().ifPresent(out::add);
    String colony = waits(first()) ? "Left alone, the colony is " : "The colony is ";
    later(first()).ifPresent(loss -> out.add(colony + loss + "."));
    byYard(first()).ifPresent(out::add);
    double dead = first().shareLost(day());
    if (Survival.hasWinter(comparison.colony().model().climate())
        && dead > DEATHS_TELL
        && dead <= 0.5) {
      out.add(
          "The colony is alive on "
              + Plain.day(day())
              + " "
              + Odds.seasons(1 - dead)
              + "; infestations count living colonies only.");
    }
    NotShown.inWinter(comparison.colony().model().climate()).ifPresent(out::add);
    supersKeepOff().ifPresent(out::add);
    PlanRun best = best();
    if (comparison.runs().size() > 1 && best != first()) {
      out.add(
          "With "
              + best.plan().name()
              + ", expect on "
              + Plain.day(day())
              + ": "
              + outlookThen(best)
              + ".");
    }
    return out;
  }

  /** Why no plan treats on the decision date. */
  private Optional<String> supersKeepOff() {
    ColonyCase c = comparison.colony();
    boolean treated =
        comparison.runs().stream()
            .flatMap(run -> run.plan().courses().stream())
            .anyMatch(course -> course.from().equals(c.now()));
    return comparison.runs().size() > 1
            && !treated
            && UsualPlans.waitsForHarvest(c, Optional.empty())
        ? Optional.of(
            "Supers are usually on now, so no usual plan treats today; --plan tries one that"
                + " the label allows.")
        : Optional.empty();
  }

  /** {@return whether mites that may still come in from other colonies move the answer} */
  public boolean reinvasionTells() {
    return arrivals().isPresent();
  }

  /** What may still come in from other colonies, of which the washes so far know nothing. */
  private Optional<String> arrivals() {
    if (!waits(first()) || first().shareLost(day()) > 0.5) {
      return Optional.empty();
    }
    double all = on(first()).median();
    OptionalDouble without = comparison.withoutArrivals(day());
    return without.isPresent()
            && without.getAsDouble() < ARRIVALS_TELL * all
            && !about(without.getAsDouble()).equals(about(all))
        ? Optional.of(
            "Reinvasion, which washes cannot foresee, is included; without it expect "
                + about(without.getAsDouble())
                + ".")
        : Optional.empty();
  }

  /** How likely the loss of the colony is after the {@link #day}, when there is more to say. */
  private Optional<String> later(PlanRun run) {
    Optional<SpringLow> low = run.springLow();
    if (low.isPresent()) {
      double lost = run.shareLost(low.get().day());
      return Optional.of(
          "dead or too weak by " + Plain.day(low.get().day()) + " " + Odds.seasons(lost));
    }
    if (!Survival.hasWinter(comparison.colony().model().climate())) {
      return Optional.empty();
    }
    LocalDate until = comparison.colony().until();
    double lost = run.shareLost(until);
    boolean said = !until.isAfter(day()) && lost > 0.5;
    return said || lost <= WORTH_SAYING
        ? Optional.empty()
        : Optional.of("dead or too weak by " + Plain.day(until) + " " + Odds.seasons(lost));
  }

  /** The range of that chance over yards and winters, where there is a spring to reach. */
  private static Optional<String> byYard(PlanRun run) {
    return run.springLow()
        .map(low -> run.lossByYard(low.day()))
        .map(
            losses ->
                "In 90 % of yards and winters that is "
                    + Digits.chances(losses.q05(), losses.q95())
                    + ".");
  }

  /**
   * {@return what a plan leaves, as one item of a list that says the day and the threshold above
   * it}
   *
   * @param run a plan that was played
   */
  public String item(PlanRun run) {
    StringBuilder s = new StringBuilder();
    double lost = run.shareLost(day());
    if (lost > 0.5) {
      s.append("lost ").append(Odds.seasons(lost)).append('.');
    } else {
      QuantileSummary on = on(run);
      s.append(about(on.median())).append(" (").append(Plain.levels(on.q05(), on.q95()));
      s.append(").");
      threshold()
          .ifPresent(
              l ->
                  s.append(" Over the treatment threshold ")
                      .append(Odds.seasons(chanceOver(run, l)))
                      .append('.'));
    }
    later(run).ifPresent(loss -> s.append(" D").append(loss.substring(1)).append('.'));
    byYard(run).ifPresent(range -> s.append(' ').append(range));
    return s.toString();
  }

  /** A threshold, and what it means in a wash: {@code 3 (9 mites in 300 bees)}. */
  public static String thresholdWords(ThresholdSet thresholds, double perHundred) {
    int bees = thresholds.perBees() == 100 ? USUAL_WASH : thresholds.perBees();
    String mites = Plain.threshold(perHundred * bees / 100);
    return Plain.threshold(perHundred)
        + " ("
        + mites
        + (mites.equals("1") ? " mite in " : " mites in ")
        + bees
        + " bees)";
  }

  /** {@return what stands above the items: the day, and the threshold on it} */
  public String itemHead() {
    ColonyCase c = comparison.colony();
    String head = "Mites per 100 bees on " + Plain.day(day()) + ", with the 90 % interval";
    return threshold()
        .map(
            l ->
                head
                    + "; the treatment threshold then is "
                    + thresholdWords(c.thresholds(), l)
                    + ".")
        .orElse(head + ". " + noneThen());
  }

  private String outlook(PlanRun run) {
    double lost = run.shareLost(day());
    return lost > 0.5
        ? "the colony is lost by " + Plain.day(day()) + " " + Odds.seasons(lost)
        : "expect " + brief(run) + " on " + Plain.day(day()) + range(run) + overThreshold(run);
  }

  private String outlookThen(PlanRun run) {
    double lost = run.shareLost(day());
    return lost > 0.5
        ? "even so the colony is lost by then " + Odds.seasons(lost)
        : about(on(run).median()) + " per 100 bees" + range(run) + overThreshold(run);
  }

  private static String under(PlanRun run) {
    return waits(run) ? "If you wait" : "With " + run.plan().name();
  }

  private static boolean waits(PlanRun run) {
    return run.plan().controls().isEmpty();
  }

  private String brief(PlanRun run) {
    return about(on(run).median()) + " mites per 100 bees";
  }

  static String about(double perHundred) {
    String level = Plain.level(perHundred);
    return Plain.toldApart(perHundred) ? "about " + level : level;
  }

  private String range(PlanRun run) {
    QuantileSummary s = on(run);
    return " (90 % interval " + Plain.levels(s.q05(), s.q95()) + ")";
  }

  private String overThreshold(PlanRun run) {
    Optional<Double> threshold = threshold();
    return threshold.isEmpty()
        ? ""
        : ". That is over the treatment threshold of "
            + thresholdWords(comparison.colony().thresholds(), threshold.get())
            + " "
            + Odds.seasons(chanceOver(run, threshold.get()));
  }

  /** The threshold on the {@link #day}. */
  private Optional<Double> threshold() {
    ColonyCase c = comparison.colony();
    return c.thresholdOn(day());
  }

  private String noneThen() {
    return noThreshold(day(), comparison.colony().thresholds()) + ".";
  }

  /**
   * {@return that there is no threshold on a day, as the beginning of a sentence}
   *
   * @param day the day
   * @param thresholds the set that was asked
   */
  public static String noThreshold(LocalDate day, ThresholdSet thresholds) {
    return "There is no treatment threshold on " + Plain.day(day) + " " + thresholds.where();
  }

  private double chanceOver(PlanRun run, double threshold) {
    return run.chanceOver(threshold, day());
  }

  /** When the first plan first goes over the treatment threshold. */
  private String crossing() {
    ColonyCase c = comparison.colony();
    if (!c.hasThreshold()) {
      return "There is no treatment threshold between "
          + Plain.day(c.now())
          + " and "
          + Plain.day(c.until())
          + " "
          + c.thresholds().where()
          + ".";
    }
    CrossingDays days = first().crossing();
    double already = days.shareWithin(0);
    if (already > 0.5) {
      String words = Odds.words(already);
      return Odds.nearlySure(already)
          ? "It is " + words + " over today's treatment threshold already."
          : "Chances are " + words + " that it is over today's treatment threshold already.";
    }
    Optional<LocalDate> middle = days.medianDay();
    return middle.isPresent()
        ? "It will probably be over the treatment threshold by " + Plain.day(middle.get()) + "."
        : "It goes over the treatment threshold at some time before "
            + Plain.day(c.until())
            + " "
            + Odds.seasons(days.share())
            + ".";
  }

  /**
   * {@return a warning when none of the washes fits the model; empty when they do}
   *
   * @param agreement how washes and model agree
   */
  public static Optional<String> contradiction(Agreement agreement) {
    return AgreementWords.of(agreement);
  }
}
