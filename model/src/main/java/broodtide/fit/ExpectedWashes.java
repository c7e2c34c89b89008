package broodtide.fit;

import broodtide.control.Plan;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.Survival;
import broodtide.engine.Watched;
import broodtide.engine.Workers;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.apache.commons.math3.util.FastMath;

/** What the colonies of a posterior say that washes show: those they know, and those to come. */
public final class ExpectedWashes {
  private static final Watched WATCHED =
      Watched.daily(Set.of(Quantity.INFESTATION, Quantity.ADULTS));

  /** Most mites of a wash whose place is found without the chances of all other counts. */
  private static final int FEW = 100;

  private ExpectedWashes() {}

  /**
   * Where one wash stands in what the posterior would have expected.
   *
   * @param wash the wash
   * @param place the chance of fewer mites and half the chance of as many, 0 to 1
   */
  public record Check(Wash wash, double place) {
    /** {@return whether the count lies in the outer tenth of what was expected} */
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
   * @param workers threads; their number does not change the result
   * @return one distribution per wash
   */
  public static List<CountDistribution> of(
      SeasonPosterior posterior, Plan plan, List<Wash> washes, Workers workers) {
    return parts(posterior, plan, washes, workers).stream().map(Parts::distribution).toList();
  }

  /**
   * The negative binomials of one wash, one per colony.
   *
   * @param means mites expected, at most one on every bee
   * @param sizes sizes
   * @param weights chance that the colony is alive to be washed, given that it was on the day of
   *     the wash before; above 0 for one of them at least
   */
  record Parts(double[] means, double[] sizes, double[] weights) {
    CountDistribution distribution() {
      return CountDistribution.mixture(means, sizes, weights);
    }

    /** The chance of fewer mites than a count and half the chance of as many. */
    double place(int count) {
      if (count > FEW) {
        return distribution().place(count);
      }
      double sum = 0;
      double all = 0;
      for (int i = 0; i < means.length; i++) {
        double chance = FastMath.exp(-sizes[i] * FastMath.log1p(means[i] / sizes[i]));
        double ratio = means[i] / (sizes[i] + means[i]);
        double fewer = 0;
        for (int y = 0; y < count; y++) {
          fewer += chance;
          chance *= (y + sizes[i]) / (y + 1.0) * ratio;
        }
        sum += weights[i] * (fewer + 0.5 * chance);
        all += weights[i];
      }
      return sum / all;
    }
  }

  static List<Parts> parts(
      SeasonPosterior posterior, Plan plan, List<Wash> washes, Workers workers) {
    List<LocalDate> days = washes.stream().map(Wash::date).toList();
    return parts(states(posterior, plan, days, workers), posterior.dispersions(), washes);
  }

  /**
   * Colonies on the day of a wash.
   *
   * @param infestations mites per 100 adult bees by colony
   * @param living chance that the colony is alive, given that it was on the day of the wash before
   */
  @SuppressWarnings("ArrayRecordComponent") // read only, never compared
  record State(double[] infestations, double[] living) {}

  /** The colonies of a posterior on some days. */
  static List<State> states(
      SeasonPosterior posterior, Plan plan, List<LocalDate> dates, Workers workers) {
    if (dates.isEmpty()) {
      return List.of();
    }
    Scenario past = posterior.past();
    int days = 1;
    for (LocalDate date : dates) {
      long day = date.toEpochDay() - past.start().toEpochDay();
      if (day < 0) {
        throw new IllegalArgumentException(date + " lies before the start, " + past.start());
      }
      days = Math.max(days, Math.toIntExact(day));
    }
    Scenario season = new Scenario(past.model(), plan, past.start(), Math.max(days, past.days()));
    EnsembleRun run = posterior.run(season, days, WATCHED, workers, Progress.NONE);
    Survival survival = posterior.survival();
    return dates.stream()
        .map(
            date ->
                new State(
                    run.values(Quantity.INFESTATION, date), living(survival, run, posterior, date)))
        .toList();
  }

  /** What washes show in colonies of which the state on their days is known. */
  static List<Parts> parts(List<State> states, double[] dispersions, List<Wash> washes) {
    List<Parts> out = new ArrayList<>();
    for (int w = 0; w < washes.size(); w++) {
      WashModel model = new WashModel(washes.get(w));
      State state = states.get(w);
      double[] means = new double[dispersions.length];
      double[] sizes = new double[dispersions.length];
      for (int i = 0; i < means.length; i++) {
        means[i] = model.mean(state.infestations()[i] / 100);
        sizes[i] = model.size(dispersions[i]);
      }
      out.add(new Parts(means, sizes, state.living()));
    }
    return out;
  }

  /** Chances of life since the last wash before a day, or since the start where there is none. */
  private static double[] living(
      Survival survival, EnsembleRun run, SeasonPosterior posterior, LocalDate day) {
    LocalDate from = posterior.past().start();
    for (Wash w : posterior.washes()) {
      from = w.date().isBefore(day) ? w.date() : from;
    }
    double[] out = run.least(Quantity.ADULTS, from, day);
    double spared = survival.spared(from, day);
    // a colony of which next to nothing is left weighs next to nothing, but some number must
    Arrays.setAll(out, m -> Math.max(Double.MIN_NORMAL, survival.enough(out[m]) * spared));
    return out;
  }

  /**
   * The counts that each colony may give in one wash.
   *
   * @param byCount chances by count, 0 to the bees of the wash, then by member; the last row is for
   *     that many or more, so that each member's chances add up to 1
   * @param living chance by member that the colony is alive to be washed, since the wash before;
   *     above 0
   */
  @SuppressWarnings("ArrayRecordComponent") // thousands of figures, read only, never compared
  public record Chances(double[][] byCount, double[] living) {}

  /**
   * The chance that each colony gives each count of one wash.
   *
   * @param posterior the colonies
   * @param plan what is done up to the wash; begins with the past's controls
   * @param wash date, bees, method and frame; its count is not looked at
   * @param workers threads; their number does not change the result
   * @return the chances, and how likely each colony is to be alive to be washed
   */
  public static Chances chances(SeasonPosterior posterior, Plan plan, Wash wash, Workers workers) {
    SeasonPosterior.day(posterior.past(), wash.date());
    State then = states(posterior, plan, List.of(wash.date()), workers).get(0);
    return new Chances(byCount(posterior, then.infestations(), wash), then.living());
  }

  /**
   * {@return the chance that each colony gives each count of one wash: by count, 0 to the bees of
   * the wash, then by member; the last row is for that many or more}
   *
   * @param posterior the colonies
   * @param truth mites per 100 adult bees on the day of the wash, of the first of these colonies or
   *     of all
   * @param wash bees, method and frame; its count is not looked at
   */
  public static double[][] byCount(SeasonPosterior posterior, double[] truth, Wash wash) {
    double[] dispersions = posterior.dispersions();
    WashModel model = new WashModel(wash);
    double[][] out = new double[(int) wash.beesOrAssumed() + 1][truth.length];
    for (int m = 0; m < truth.length; m++) {
      fill(out, m, model.mean(truth[m] / 100), model.size(dispersions[m]));
    }
    return out;
  }

  /** A negative binomial from the bottom up; what lies beyond the last row is put there. */
  private static void fill(double[][] out, int member, double mean, double size) {
    double chance = FastMath.exp(-size * FastMath.log1p(mean / size));
    double ratio = mean / (size + mean);
    double left = 1;
    for (int y = 0; y < out.length - 1; y++) {
      out[y][member] = chance;
      left -= chance;
      chance *= (y + size) / (y + 1.0) * ratio;
    }
    out[out.length - 1][member] = Math.max(0, left);
  }

  /**
   * {@return every wash of the posterior against what its own colonies would show}
   *
   * @param posterior the colonies that fit the washes
   * @param workers threads; their number does not change the result
   */
  public static List<Check> checks(SeasonPosterior posterior, Workers workers) {
    List<Parts> expected = parts(posterior, posterior.past().plan(), posterior.washes(), workers);
    List<Check> out = new ArrayList<>();
    for (int i = 0; i < expected.size(); i++) {
      Wash w = posterior.washes().get(i);
      out.add(new Check(w, expected.get(i).place(w.mites())));
    }
    return out;
  }
}
