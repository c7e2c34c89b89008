package broodtide.fit;

import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Scenario;
import broodtide.engine.Workers;
import broodtide.wash.Interval;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.moment.Mean;

/**
 * Forecasts that can be marked: each colony's last wash is held out and forecast from earlier ones.
 * The posterior never sees the wash that it forecasts.
 */
public final class Backtest {
  private static final int DRAWS = 2000;

  private Backtest() {}

  /**
   * One colony's record.
   *
   * @param colony name
   * @param start first day that is followed, to which the priors belong; no later than the first
   *     wash
   * @param washes washes of at least two days, else there is nothing to forecast
   * @param done what was done; what begins on the last day or later plays no part
   */
  public record Colony(String colony, LocalDate start, List<Wash> washes, List<Control> done) {
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
   * @param reach the power with which the forecast rises with growth to come, 0 or more
   * @param treated whether a miticide acted between the last wash that was seen and this one
   */
  public record Mark(
      Wash held,
      CountDistribution forecast,
      CountDistribution noChange,
      CountDistribution exponential,
      double reach,
      boolean treated) {
    /** The part of the count's own probability that lies in a part of the forecast's. */
    double within(double low, double high) {
      double from = forecast.atMost(held.mites() - 1);
      double to = forecast.atMost(held.mites());
      if (to > from) {
        return Math.max(0, Math.min(high, to) - Math.max(low, from)) / (to - from);
      }
      return to > low && to <= high || to == 0 && low == 0 ? 1 : 0;
    }

    double inside(double level) {
      return within((1 - level) / 2, (1 + level) / 2);
    }
  }

  /**
   * Marks of all colonies together.
   *
   * @param marks one per wash held out
   */
  public record Report(List<Mark> marks) {
    /** Copies the list. */
    public Report {
      marks = List.copyOf(marks);
    }

    /**
     * {@return share of held-out washes inside the central band of a level} A count on the edge of
     * the band lies inside with the part of its own probability that does, so that honest forecasts
     * hold as much as they say, however small the counts.
     *
     * @param level width of the central band, between 0 and 1
     */
    public double coverage(double level) {
      return marks.stream().mapToDouble(m -> m.inside(level)).average().orElseThrow();
    }

    /**
     * {@return 90 % range of {@link #coverage}, from colonies drawn again with replacement; a
     * single colony gives no width}
     *
     * @param level width of the central band, between 0 and 1
     * @param seed seed of the random numbers
     */
    public Interval coverageRange(double level, long seed) {
      Map<String, List<Double>> byColony = new LinkedHashMap<>();
      for (Mark m : marks) {
        byColony.computeIfAbsent(m.held().colony(), c -> new ArrayList<>()).add(m.inside(level));
      }
      List<List<Double>> colonies = List.copyOf(byColony.values());
      SplittableRandom random = Streams.of(seed, Streams.Purpose.BOOTSTRAP);
      double[] drawn = new double[DRAWS];
      for (int i = 0; i < DRAWS; i++) {
        drawn[i] =
            random
                .ints(colonies.size(), 0, colonies.size())
                .mapToObj(colonies::get)
                .flatMap(List::stream)
                .mapToDouble(Double::doubleValue)
                .average()
                .orElseThrow();
      }
      Arrays.sort(drawn);
      return new Interval(
          EnsembleRun.quantile(drawn, 0.05), EnsembleRun.quantile(drawn, 0.95), 0.9);
    }

    /**
     * {@return forecasts by the part of their probability that the count fell in, lowest first} All
     * parts are as full where forecasts are as sure as they say. A count with much probability of
     * its own straddles parts and is shared between them (Czado, Gneiting &amp; Held 2009,
     * Biometrics 65:1254).
     *
     * @param parts in how many equal parts, 2 or more
     */
    public double[] places(int parts) {
      double[] out = new double[parts];
      for (Mark m : marks) {
        for (int i = 0; i < parts; i++) {
          out[i] += m.within((double) i / parts, (i + 1.0) / parts);
        }
      }
      return out;
    }

    /** {@return mean score of the season posterior on log counts; smaller is better} */
    public double crps() {
      return marks.stream()
          .mapToDouble(m -> m.forecast().crpsOfLog(m.held().mites()))
          .average()
          .orElseThrow();
    }

    /** {@return mean score of the first baseline} */
    public double crpsNoChange() {
      return marks.stream()
          .mapToDouble(m -> m.noChange().crpsOfLog(m.held().mites()))
          .average()
          .orElseThrow();
    }

    /** {@return mean score of the second baseline} */
    public double crpsExponential() {
      return marks.stream()
          .mapToDouble(m -> m.exponential().crpsOfLog(m.held().mites()))
          .average()
          .orElseThrow();
    }
  }

  /**
   * Runs the test: every wash of a colony's last day is held out and forecast from those of earlier
   * days. Colonies without an earlier day are left out.
   *
   * @param model rates of the place
   * @param colonies records
   * @param priors what is believed before
   * @param effort how hard to work on each colony
   * @param workers threads; their number does not change the result
   * @param progress is told of work done
   * @return the marks of all held-out washes
   */
  public static Report run(
      ColonyModel model,
      List<Colony> colonies,
      Priors priors,
      SeasonPosterior.SamplerSettings effort,
      Workers workers,
      Progress progress) {
    SeasonBanks banks = SeasonBanks.inHeap(effort.particles());
    List<List<Mark>> marks = new ArrayList<>(Collections.nCopies(colonies.size(), List.of()));
    // those that began alike one after the other, so that they find their seasons ready
    int[] order =
        IntStream.range(0, colonies.size())
            .boxed()
            .sorted(Comparator.comparing(i -> colonies.get(i).start()))
            .mapToInt(Integer::intValue)
            .toArray();
    for (int i = 0; i < order.length; i++) {
      Colony c = colonies.get(order[i]);
      marks.set(order[i], marks(model, c, priors, effort, banks, workers));
      progress.at(i + 1, order.length);
    }
    return new Report(marks.stream().flatMap(List::stream).toList());
  }

  private static List<Mark> marks(
      ColonyModel model,
      Colony c,
      Priors priors,
      SeasonPosterior.SamplerSettings effort,
      SeasonBanks banks,
      Workers workers) {
    if (c.washes().isEmpty()) {
      return List.of();
    }
    LocalDate last = c.washes().get(c.washes().size() - 1).date();
    List<Wash> seen = c.washes().stream().filter(w -> w.date().isBefore(last)).toList();
    List<Wash> held = c.washes().stream().filter(w -> w.date().equals(last)).toList();
    if (seen.isEmpty()) {
      return List.of();
    }
    List<Control> done = c.done().stream().filter(d -> d.from().isBefore(last)).toList();
    Plan plan = new Plan("done", done);
    Scenario season = Scenario.until(model, plan, c.start(), last);
    SeasonPosterior posterior =
        banks.posterior(season, seen, List.of(), priors, effort, workers, Progress.NONE);
    List<ExpectedWashes.Parts> parts = ExpectedWashes.parts(posterior, plan, held, workers);
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < held.size(); i++) {
      marks.add(
          new Mark(
              held.get(i),
              parts.get(i).distribution(),
              Baselines.noChange(seen, held.get(i)),
              Baselines.exponential(seen, held.get(i)),
              reach(posterior, season, parts.get(i)),
              treated(plan, posterior.lastWash(), last)));
    }
    return marks;
  }

  private static boolean treated(Plan plan, LocalDate seen, LocalDate held) {
    return plan.courses().stream().anyMatch(c -> c.to().isAfter(seen) && !c.from().isAfter(held));
  }

  /** Slopes of the logarithm of a wash on that of growth, in each season from the last wash on. */
  private static double reach(
      SeasonPosterior posterior, Scenario season, ExpectedWashes.Parts parts) {
    double[] mites = Arrays.stream(parts.means()).map(ForecastBias::log).toArray();
    BeeYears years = BeeYears.of(season, posterior.lastWash());
    double reach = slope(posterior, Unknown.GROWTH_TO_COME, 0, mites, parts.weights());
    for (int s = years.seen() + 1; s < years.seasons(); s++) {
      reach += slope(posterior, Unknown.REPRODUCTION_FACTOR, s, mites, parts.weights());
    }
    return Math.max(0, reach);
  }

  private static double slope(
      SeasonPosterior posterior, Unknown growth, int season, double[] mites, double[] weights) {
    double spread = posterior.priors().toCome(growth).logSd();
    double[] draws = posterior.draws(growth, season);
    double middle = new Mean().evaluate(draws, weights);
    double together = 0;
    double square = 0;
    for (int i = 0; i < draws.length; i++) {
      double away = weights[i] * (draws[i] - middle);
      together += away * mites[i];
      square += away * (draws[i] - middle);
    }
    return spread > 0 && square > 0 ? together / square / spread : 0;
  }
}
