package broodtide.compare;

import broodtide.engine.Workers;
import broodtide.fit.ExpectedWashes;
import java.util.List;

/**
 * Everything worked out for one colony, ready to be drawn and written.
 *
 * @param comparison the plans
 * @param checks where each wash stood in what fits them all
 * @param days the days of each run of the comparison, in the order of the runs
 */
public record ColonyResult(
    Comparison comparison, List<ExpectedWashes.Check> checks, List<List<PlanDay>> days) {
  /** Copies the lists. */
  public ColonyResult {
    checks = List.copyOf(checks);
    days = List.copyOf(days);
  }

  /** Sums up a finished comparison. */
  public static ColonyResult of(Comparison comparison, Workers workers) {
    return new ColonyResult(
        comparison,
        ExpectedWashes.checks(comparison.posterior(), workers),
        comparison.runs().stream().map(PlanDay::all).toList());
  }

  /** The days of a run of the comparison. */
  public List<PlanDay> days(PlanRun run) {
    return days.get(comparison.runs().indexOf(run));
  }
}
