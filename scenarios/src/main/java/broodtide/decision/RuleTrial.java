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
  /** Daily high below which no colony is opened to be washed, degrees Celsius; choice. */
  private static final int COLDEST = 10;

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
    List<LocalDate> days = days(colony, round);
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
    WashDraws luck = WashDraws.of(round, posterior.dispersions(), days.size(), seed);
    List<RuleResult> results = new ArrayList<>();
    List<Comparison.Refused> refused = new ArrayList<>();
    int done = 0;
    for (Rule rule : rules) {
      try {
        results.add(new RulePlay(colony, posterior, round, days, luck, rule, workers).play());
      } catch (RefusedException e) {
        refused.add(new Comparison.Refused(rule.name(), e.reason()));
      }
      progress.at(++done, rules.size());
    }
    return new RuleTrial(colony, round, results, refused);
  }

  /** {@return the days on which the colony is washed} */
  public List<LocalDate> days() {
    return days(colony, round);
  }

  /** Bees that cluster in the cold are not shaken off their combs. */
  private static List<LocalDate> days(ColonyCase colony, WashRound round) {
    List<LocalDate> days =
        round.days().stream()
            .filter(d -> colony.model().climate().warmth().at(d) >= COLDEST)
            .toList();
    if (days.isEmpty()) {
      throw new Unworkable(
          "colony \""
              + colony.colony()
              + "\": from "
              + round.first()
              + " to "
              + round.last()
              + " no day of a wash is as warm as "
              + COLDEST
              + " C; give other days with --from and --to");
    }
    return days;
  }
}
