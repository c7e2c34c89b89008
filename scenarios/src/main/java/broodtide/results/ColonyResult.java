package broodtide.results;

import broodtide.assessment.Comparison;
import broodtide.assessment.PlanDay;
import broodtide.assessment.PlanRun;
import broodtide.assessment.SeasonShares;
import broodtide.assessment.Sensitivity;
import broodtide.decision.Windows;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.Agreement;
import broodtide.fit.ExpectedWashes;
import broodtide.words.Answer;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;

/**
 * Everything worked out for one colony, ready to be drawn and written.
 *
 * @param comparison the plans
 * @param windows when to begin which control, where that was asked for
 * @param agreement where each wash stood in what fits them all, and whether they fit at all
 * @param days the days of each run of the comparison, in the order of the runs
 * @param inside the season of the first run, seen from inside the hive
 * @param sensitivity which unknown matters for the answer
 */
public record ColonyResult(
    Comparison comparison,
    Optional<Windows> windows,
    Agreement agreement,
    List<List<PlanDay>> days,
    SeasonShares inside,
    List<Sensitivity> sensitivity) {
  /** Copies the list. */
  public ColonyResult {
    days = List.copyOf(days);
    sensitivity = List.copyOf(sensitivity);
  }

  /**
   * Sums up a finished comparison.
   *
   * @param comparison plans of one colony that have been played
   * @param windows the map of windows for the same colony; empty when none was asked for
   * @param workers threads; their number does not change the result
   * @return the result
   */
  public static ColonyResult of(Comparison comparison, Optional<Windows> windows, Workers workers) {
    Answer answer = new Answer(comparison);
    return new ColonyResult(
        comparison,
        windows,
        Agreement.of(comparison.posterior(), workers),
        days(comparison.runs(), workers),
        SeasonShares.of(comparison, comparison.runs().get(0), workers),
        Sensitivity.of(comparison, answer.first(), answer.day(), workers));
  }

  private static List<List<PlanDay>> days(List<PlanRun> runs, Workers workers) {
    Map<Integer, List<PlanDay>> days = new ConcurrentHashMap<>();
    workers.run(runs.size(), i -> days.put(i, PlanDay.all(runs.get(i))), Progress.NONE);
    return IntStream.range(0, runs.size()).mapToObj(days::get).toList();
  }

  /** {@return where each wash stood in what fits them all, by date} */
  public List<ExpectedWashes.Check> checks() {
    return agreement.checks();
  }

  /**
   * {@return the days of a run of the comparison}
   *
   * @param run a plan that was played
   */
  public List<PlanDay> days(PlanRun run) {
    return days.get(comparison.runs().indexOf(run));
  }
}
