package broodtide.fit;

import broodtide.control.Plan;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.Workers;
import broodtide.wash.Wash;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** What the colonies of a posterior say that washes show: those they know, and those to come. */
public final class ExpectedWashes {
  private ExpectedWashes() {}

  /**
   * Where one wash stands in what the posterior would have expected.
   *
   * @param wash the wash
   * @param place the chance of fewer mites and half the chance of as many, 0 to 1
   */
  public record Check(Wash wash, double place) {
    /** Whether the count lies in the outer tenth of what was expected. */
    public boolean surprising() {
      return place < 0.05 || place > 0.95;
    }
  }

  /**
   * Forecasts washes.
   *
   * @param posterior the colonies
   * @param plan what is done up to the last of the washes; begins with the past's controls
   * @param washes dates, bees, methods and frames; their counts are not looked at
   * @return one distribution per wash
   */
  public static List<CountDistribution> of(
      SeasonPosterior posterior, Plan plan, List<Wash> washes, Workers workers) {
    return parts(posterior, plan, washes, workers).stream()
        .map(p -> CountDistribution.mixture(p.means(), p.sizes()))
        .toList();
  }

  /**
   * The negative binomials of one wash, one per colony.
   *
   * @param means mites expected
   * @param sizes sizes
   */
  record Parts(double[] means, double[] sizes) {}

  static List<Parts> parts(
      SeasonPosterior posterior, Plan plan, List<Wash> washes, Workers workers) {
    if (washes.isEmpty()) {
      return List.of();
    }
    Scenario past = posterior.past();
    int days = 1;
    for (Wash w : washes) {
      long day = w.date().toEpochDay() - past.start().toEpochDay();
      if (day < 0) {
        throw new IllegalArgumentException(w.date() + " lies before the start, " + past.start());
      }
      days = Math.max(days, Math.toIntExact(day));
    }
    Scenario season = new Scenario(past.model(), plan, past.start(), Math.max(days, past.days()));
    EnsembleRun run =
        posterior.run(season, days, Set.of(Quantity.INFESTATION), workers, Progress.NONE);
    double[] dispersions = posterior.dispersions();
    List<Parts> out = new ArrayList<>();
    for (Wash w : washes) {
      WashModel model = new WashModel(w);
      double[] means = run.values(Quantity.INFESTATION, w.date());
      double[] sizes = new double[means.length];
      for (int i = 0; i < means.length; i++) {
        means[i] = model.mean(means[i] / 100);
        sizes[i] = model.size(dispersions[i]);
      }
      out.add(new Parts(means, sizes));
    }
    return out;
  }

  /** Every wash of the posterior against what its own colonies would show. */
  public static List<Check> checks(SeasonPosterior posterior, Workers workers) {
    List<CountDistribution> expected =
        of(posterior, posterior.past().plan(), posterior.washes(), workers);
    List<Check> out = new ArrayList<>();
    for (int i = 0; i < expected.size(); i++) {
      Wash w = posterior.washes().get(i);
      out.add(new Check(w, expected.get(i).place(w.mites())));
    }
    return out;
  }
}
