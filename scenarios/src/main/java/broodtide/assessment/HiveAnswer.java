package broodtide.assessment;

import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.SeasonBanks;
import broodtide.fit.SeasonPosterior;
import broodtide.measure.Unworkable;
import java.util.List;
import java.util.Optional;

/**
 * One hive of a large apiary, worked out by itself: its plans side by side and what they lead to.
 * It holds the seasons of its simulated colonies, tens of megabytes, so one is let go before the
 * next; {@link #row} keeps what the sheet of the apiary needs.
 *
 * @param comparison the plans, waiting among them
 * @param decision what is decided of the hive; that of waiting where no plans were laid
 * @since 0.2.0
 */
public record HiveAnswer(Comparison comparison, Decision decision) {
  /**
   * {@return the answer for one hive}
   *
   * @param c the hive
   * @param plans what to play, waiting among them
   * @param laysNone whether no plans are laid, so that waiting alone is decided on
   * @param settings how many colonies to simulate, and the seed
   * @param banks seasons that hives of one place and start share
   * @param workers threads; their number changes no figure
   * @throws Unworkable when no plan can be carried out
   */
  public static HiveAnswer of(
      ColonyCase c,
      List<Plan> plans,
      boolean laysNone,
      SeasonPosterior.SamplerSettings settings,
      SeasonBanks banks,
      Workers workers) {
    Assessment assessment = Assessment.of(c, settings, banks, workers, Progress.NONE);
    if (laysNone) {
      Assessment.WaitingAlone waits = assessment.waitingAlone();
      return new HiveAnswer(waits.comparison(), waits.decision());
    }
    Comparison comparison = assessment.compare(plans).carriedOut();
    return new HiveAnswer(comparison, comparison.decision());
  }

  /**
   * {@return the hive's row of the sheet}
   *
   * @param wash what a wash of the hive on the decision date is worth; empty where that is not
   *     known
   */
  public HiveRow row(Optional<WashGain> wash) {
    return HiveRow.of(comparison, decision, wash);
  }
}
