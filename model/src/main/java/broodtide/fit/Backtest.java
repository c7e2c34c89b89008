package broodtide.fit;

import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.Progress;
import broodtide.engine.Scenario;
import broodtide.engine.Workers;
import broodtide.wash.Wash;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Forecasts that can be marked: each colony's last wash is held out and forecast from the others.
 * The posterior never sees the wash that it forecasts.
 */
public final class Backtest {
  private Backtest() {}

  /**
   * One colony's record.
   *
   * @param colony name
   * @param washes at least two
   * @param done what was done
   */
  public record Colony(String colony, List<Wash> washes, List<Control> done) {
    /** Sorts the washes by date. */
    public Colony {
      List<Wash> sorted = new ArrayList<>(washes);
      sorted.sort(Comparator.comparing(Wash::date));
      washes = List.copyOf(sorted);
      done = List.copyOf(done);
    }
  }

  /**
   * One forecast and what came.
   *
   * @param held the wash that was held out
   * @param forecast from the season posterior
   * @param noChange the first baseline
   * @param exponential the second baseline
   */
  public record Mark(
      Wash held,
      CountDistribution forecast,
      CountDistribution noChange,
      CountDistribution exponential) {}

  /**
   * Marks of all colonies together.
   *
   * @param marks one per colony
   */
  public record Report(List<Mark> marks) {
    /** Copies the list. */
    public Report {
      marks = List.copyOf(marks);
    }

    /** Share of held-out washes inside the central band of a level. */
    public double coverage(double level) {
      return marks.stream().filter(m -> m.forecast().holds(m.held().mites(), level)).count()
          / (double) marks.size();
    }

    /** Mean score of the season posterior on log counts; smaller is better. */
    public double crps() {
      return marks.stream()
          .mapToDouble(m -> m.forecast().crpsOfLog(m.held().mites()))
          .average()
          .orElseThrow();
    }

    /** Mean score of the first baseline. */
    public double crpsNoChange() {
      return marks.stream()
          .mapToDouble(m -> m.noChange().crpsOfLog(m.held().mites()))
          .average()
          .orElseThrow();
    }

    /** Mean score of the second baseline. */
    public double crpsExponential() {
      return marks.stream()
          .mapToDouble(m -> m.exponential().crpsOfLog(m.held().mites()))
          .average()
          .orElseThrow();
    }
  }

  /**
   * Runs the test. Colonies with fewer than two washes on different days are left out.
   *
   * @param model rates of the place
   * @param colonies records
   * @param priors what is believed before
   * @param effort how hard to work on each colony
   */
  public static Report run(
      ColonyModel model,
      List<Colony> colonies,
      Priors priors,
      SeasonPosterior.Effort effort,
      Workers workers,
      Progress progress) {
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < colonies.size(); i++) {
      Colony c = colonies.get(i);
      if (c.washes().size() > 1) {
        marks.add(mark(model, c, priors, effort, workers));
      }
      progress.at(i + 1, colonies.size());
    }
    return new Report(marks);
  }

  private static Mark mark(
      ColonyModel model, Colony c, Priors priors, SeasonPosterior.Effort effort, Workers workers) {
    int last = c.washes().size() - 1;
    Wash held = c.washes().get(last);
    List<Wash> seen = c.washes().subList(0, last);
    Plan plan = new Plan("done", c.done());
    Scenario season = Scenario.until(model, plan, seen.get(0).date(), held.date());
    SeasonPosterior posterior =
        SeasonPosterior.of(season, seen, priors, effort, workers, Progress.NONE);
    return new Mark(
        held,
        WashForecast.of(posterior, plan, List.of(held), workers).get(0),
        Baselines.noChange(seen, held),
        Baselines.exponential(seen, held));
  }
}
