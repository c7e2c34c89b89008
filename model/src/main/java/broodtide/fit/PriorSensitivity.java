package broodtide.fit;

import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.engine.Watched;
import broodtide.engine.Workers;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;

/**
 * Which unknown would matter if there were no washes: its total index under what is believed
 * beforehand, where unknowns do not depend on each other.
 *
 * @param unknown the unknown
 * @param course number of the miticide course that it belongs to from 0 in the order of the plan,
 *     or -1 when it is the colony's
 * @param season number of the season of the bees that it belongs to, from 0; 0 as well when it is
 *     the same in all
 * @param index its total index
 */
public record PriorSensitivity(Unknown unknown, int course, int season, TotalIndex index) {
  /** Draws; each is played once, and once more for each unknown. Choice. */
  public static final int DRAWS = 128;

  /**
   * {@return the total index of every unknown, in the order of {@link Unknown}}
   *
   * @param season what is played, in the place and from the first day of the posterior
   * @param posterior colonies with the same priors and start; its washes are left out
   * @param day the day on which the infestation is looked at
   * @param answer what is made of it, for instance its logarithm
   * @param seed seed of the random numbers
   * @param workers threads; their number does not change the result
   */
  public static List<PriorSensitivity> of(
      Scenario season,
      SeasonPosterior posterior,
      LocalDate day,
      DoubleUnaryOperator answer,
      long seed,
      Workers workers) {
    BeeYears years = BeeYears.of(season, posterior.lastWash());
    ParticleLayout layout = ParticleLayout.of(SeasonPosterior.courses(season), years.seasons());
    List<ParticleLayout.Place> places = layout.places();
    Question asked = new Question(season, posterior.lastWash(), day, posterior.priors(), seed);
    List<double[]> then =
        posterior
            .origin()
            .exchanged
            .get(asked, () -> exchanged(season, posterior, day, seed, layout, years, workers));
    double[] base = Arrays.stream(then.get(0)).map(answer).toArray();
    List<PriorSensitivity> out = new ArrayList<>();
    for (int d = 0; d < places.size(); d++) {
      ParticleLayout.Place place = places.get(d);
      double[] other = Arrays.stream(then.get(d + 1)).map(answer).toArray();
      TotalIndex index = TotalIndex.of(base, other);
      out.add(new PriorSensitivity(place.unknown(), place.course(), place.season(), index));
    }
    return out;
  }

  /**
   * What exchanged unknowns hang on.
   *
   * @param season what is played
   * @param lastWash from which day on growth is that to come
   * @param day the day on which the infestation is looked at
   * @param priors what is believed
   * @param seed seed of the random numbers
   */
  record Question(Scenario season, LocalDate lastWash, LocalDate day, Priors priors, long seed) {}

  /** Infestations on the day: of the first draws, and of those with one unknown of the second. */
  private static List<double[]> exchanged(
      Scenario season,
      SeasonPosterior posterior,
      LocalDate day,
      long seed,
      ParticleLayout layout,
      BeeYears years,
      Workers workers) {
    TrimmedScenario part = TrimmedScenario.to(season, SeasonPosterior.day(season, day));
    int places = layout.places().size();
    double[][] first = draws(Streams.of(seed, Streams.Purpose.SENSITIVITY), places);
    double[][] second = draws(Streams.of(seed + 1, Streams.Purpose.SENSITIVITY), places);
    StandardColony start = posterior.start();
    Priors priors = posterior.priors();
    // One after the other, so that no more than one run is held.
    Answers play =
        z -> {
          List<SimulatedColony> colonies =
              Arrays.stream(z)
                  .map(row -> part.fitted(priors.draw(row, layout).colony(years)))
                  .toList();
          Watched kept = Watched.daily(Set.of(Quantity.INFESTATION));
          return EnsembleRun.of(part.scenario(), start, colonies, kept, workers, Progress.NONE)
              .values(Quantity.INFESTATION, day);
        };
    List<double[]> out = new ArrayList<>();
    out.add(play.of(first));
    for (int d = 0; d < places; d++) {
      double[][] mixed = new double[DRAWS][];
      for (int i = 0; i < DRAWS; i++) {
        mixed[i] = first[i].clone();
        mixed[i][d] = second[i][d];
      }
      out.add(play.of(mixed));
    }
    return out;
  }

  @FunctionalInterface
  private interface Answers {
    double[] of(double[][] z);
  }

  private static double[][] draws(SplittableRandom random, int unknowns) {
    double[][] out = new double[DRAWS][unknowns];
    for (double[] z : out) {
      for (int d = 0; d < unknowns; d++) {
        z[d] = random.nextGaussian();
      }
    }
    return out;
  }
}
