package broodtide.assessment;

import broodtide.engine.Quantity;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
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
 * @param lastCount its newest count; empty when nothing was counted
 * @param infestation mites per 100 adult bees on the decision date, of living colonies
 * @param judgedOn the day that the answer speaks of: see {@link Comparison#answerDay}
 * @param judged mites per 100 adult bees on that day if one waits, of living colonies
 * @param decision what is decided of the hive
 * @param nextCount the count that it needs; empty where its counts are enough
 * @param over what a count of hives over the threshold today must know of it; empty without one
 * @param lost what figures of the apiary must know of its loss, by the name of the plan; empty
 *     where losses are not known
 */
public record HiveRow(
    String hive,
    Optional<Wash> lastCount,
    QuantileSummary infestation,
    LocalDate judgedOn,
    QuantileSummary judged,
    Decision decision,
    Optional<NextCount> nextCount,
    Optional<HiveChance> over,
    Map<String, HiveLoss> lost) {
  /** A hive with at least this chance counts as probably over the threshold. */
  private static final double PROBABLY = 0.5;

  /**
   * Hives by urgency. Those that are probably over the treatment threshold today come first. Within
   * both groups the higher winter loss if one waits comes first; where winter losses are not known,
   * the higher infestation on the {@link #judgedOn judged day}. Equal hives stand by name.
   */
  static final Comparator<HiveRow> BY_URGENCY =
      Comparator.comparing(HiveRow::probablyOver)
          .thenComparingDouble(row -> row.winterLoss().orElse(0))
          .thenComparingDouble(row -> row.judged().median())
          .reversed()
          .thenComparing(HiveRow::hive);

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
   */
  public static HiveRow of(Comparison comparison, Decision decision) {
    ColonyCase c = comparison.colony();
    PlanRun waiting = comparison.reference();
    List<Wash> washes = c.washes();
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
        washes.stream().max(Comparator.comparing(Wash::date)),
        waiting.on(Quantity.INFESTATION, c.now()),
        comparison.answerDay(),
        waiting.on(Quantity.INFESTATION, comparison.answerDay()),
        decision,
        NextCount.of(washes, c.now()),
        HiveChance.over(comparison.posterior(), waiting, c.now()),
        lost);
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
