package broodtide.assessment;

import broodtide.engine.Quantity;
import broodtide.wash.BoardCount;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One hive of an apiary: its last count, where it stands today, and its decision. Figures of plans
 * are those of the {@link Decision}; the row adds none of its own.
 *
 * <p>Immutable, and safe to share between threads. It holds no simulated season.
 *
 * @param hive its name
 * @param lastCount its newest wash; empty where there is none
 * @param lastBoard its newest board, where no wash of it is as new; empty otherwise
 * @param infestation mites per 100 adult bees on the decision date, of living colonies
 * @param judgedOn the day that the answer speaks of: see {@link Comparison#answerDay}
 * @param judged mites per 100 adult bees on that day if one waits, of living colonies
 * @param decision what is decided of the hive
 * @param nextCount the count that it needs; empty where its counts are enough
 * @param wash what a wash of it today is worth; empty where no plans were laid or losses are not
 *     known
 * @param over what a count of hives over the threshold today must know of it; empty without one
 * @param lost what figures of the apiary must know of its loss, by the name of the plan; empty
 *     where losses are not known
 */
public record HiveRow(
    String hive,
    Optional<Wash> lastCount,
    Optional<BoardCount> lastBoard,
    QuantileSummary infestation,
    LocalDate judgedOn,
    QuantileSummary judged,
    Decision decision,
    Optional<NextCount> nextCount,
    Optional<WashGain> wash,
    Optional<HiveChance> over,
    Map<String, HiveLoss> lost) {
  /** A hive with at least this chance counts as probably over the threshold. */
  private static final double PROBABLY = 0.5;

  /** Hives by {@link HiveUrgency}. */
  static final Comparator<HiveRow> BY_URGENCY = Comparator.comparing(HiveRow::urgency);

  /** Copies the map. */
  public HiveRow {
    lost = Map.copyOf(lost);
  }

  /**
   * {@return the row of a hive}
   *
   * @param comparison plans that were played, waiting among them
   * @param decision what is decided; the one of the comparison, or that of waiting where no plans
   *     were laid
   * @param wash what a wash of the hive today is worth
   */
  public static HiveRow of(Comparison comparison, Decision decision, Optional<WashGain> wash) {
    ColonyCase c = comparison.colony();
    PlanRun waiting = comparison.reference();
    Map<String, HiveLoss> lost = new HashMap<>();
    if (comparison.runs().size() > 1) {
      for (PlanRun run : comparison.runs()) {
        HiveChance.lost(comparison.posterior(), run)
            .ifPresent(
                chance -> lost.put(run.plan().name(), new HiveLoss(chance, run.mitesWhenLost())));
      }
    }
    return new HiveRow(
        c.colony(),
        lastWash(c),
        lastBoard(c),
        waiting.on(Quantity.INFESTATION, c.now()),
        comparison.answerDay(),
        waiting.on(Quantity.INFESTATION, comparison.answerDay()),
        decision,
        NextCount.of(c.washes(), c.now()),
        wash,
        HiveChance.over(comparison.posterior(), waiting, c.now()),
        lost);
  }

  static Optional<Wash> lastWash(ColonyCase c) {
    return c.washes().stream().max(Comparator.comparing(Wash::date));
  }

  static Optional<BoardCount> lastBoard(ColonyCase c) {
    Optional<LocalDate> washed = lastWash(c).map(Wash::date);
    return c.boards().stream()
        .max(Comparator.comparing(BoardCount::date))
        .filter(board -> washed.isEmpty() || board.date().isAfter(washed.get()));
  }

  /** {@return its place among others on the sheet} */
  public HiveUrgency urgency() {
    return new HiveUrgency(probablyOver(), winterLoss().orElse(0), judged.median(), hive);
  }

  /** {@return whether it is more likely than not over the treatment threshold today} */
  public boolean probablyOver() {
    return decision.overThresholdToday().orElse(0) >= PROBABLY;
  }

  /** {@return winter loss if one waits, 0 to 1; empty where it is not known} */
  public OptionalDouble winterLoss() {
    return loss(decision.waiting());
  }

  /** {@return winter loss with the best plan, 0 to 1; empty where it is not known} */
  public OptionalDouble winterLossWithBest() {
    return loss(decision.best());
  }

  /**
   * {@return by how much the best plan lowers the winter loss, 0 to 1; 0 where that is waiting,
   * empty where losses are not known or no plans were laid}
   */
  public OptionalDouble gain() {
    return decision.knowsWinterLoss() && decision.ranking().isPresent()
        ? OptionalDouble.of(decision.waiting().winterLoss() - decision.best().winterLoss())
        : OptionalDouble.empty();
  }

  private OptionalDouble loss(PlanSummary plan) {
    return decision.knowsWinterLoss()
        ? OptionalDouble.of(plan.winterLoss())
        : OptionalDouble.empty();
  }
}
