package broodtide.decision;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import broodtide.measure.RefusedException;
import broodtide.measure.Unworkable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * Rules played through the rest of a season by the same colonies with the same luck at washing.
 *
 * @param colony the case
 * @param round the washes that rules go by
 * @param results one per rule that could be played, in their order
 * @param refused rules that could not, each with the reason
 */
public record RuleTrial(
    ColonyCase colony,
    WashRound round,
    List<RuleResult> results,
    List<Comparison.Refused> refused) {
  /** Copies the lists. */
  public RuleTrial {
    results = List.copyOf(results);
    refused = List.copyOf(refused);
  }

  /**
   * Plays rules. One that cannot be played is named and does not stop the rest.
   *
   * @param colony the case
   * @param posterior what its washes say
   * @param round the washes to come; they begin after the day of decision and end before the last
   *     day
   * @param rules the rules
   * @param seed seed of the luck at washing
   * @param workers threads; their number does not change the result
   * @param progress is told of every rule done
   * @return the results
   * @throws Unworkable when washes lie outside the days to come
   */
  public static RuleTrial of(
      ColonyCase colony,
      SeasonPosterior posterior,
      WashRound round,
      List<Rule> rules,
      long seed,
      Workers workers,
      Progress progress) {
    List<LocalDate> days = round.days();
    LocalDate last = days.get(days.size() - 1);
    if (!round.first().isAfter(colony.now()) || !last.isBefore(colony.until())) {
      throw new Unworkable(
          "the washes of the rules run from "
              + round.first()
              + " to "
              + last
              + "; they must lie after "
              + colony.now()
              + " and before "
              + colony.until());
    }
    WashLuck luck = WashLuck.of(round, posterior.dispersions(), days.size(), seed);
    List<RuleResult> results = new ArrayList<>();
    List<Comparison.Refused> refused = new ArrayList<>();
    int done = 0;
    for (Rule rule : rules) {
      try {
        results.add(new RulePlay(colony, posterior, round, luck, rule, workers).play());
      } catch (RefusedException e) {
        refused.add(new Comparison.Refused(rule.name(), e.reason()));
      }
      progress.at(++done, rules.size());
    }
    return new RuleTrial(colony, round, results, refused);
  }
}
