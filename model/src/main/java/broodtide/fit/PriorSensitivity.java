package broodtide.fit;

import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
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
 * @param index its total index
 */
public record PriorSensitivity(Unknown unknown, int course, TotalIndex index) {
  /** Draws; each is played once, and once more for each unknown. Choice. */
  private static final int DRAWS = 512;

  /**
   * {@return the total index of every unknown, in the order of {@link Unknown}}
   *
   * @param season what is played
   * @param priors what is believed
   * @param day the day on which the infestation is looked at
   * @param answer what is made of it, for instance its logarithm
   * @param seed seed of the random numbers
   * @param workers threads; their number does not change the result
   */
  public static List<PriorSensitivity> of(
      Scenario season,
      Priors priors,
      LocalDate day,
      DoubleUnaryOperator answer,
      long seed,
      Workers workers) {
    List<ParticleLayout.Place> places = ParticleLayout.of(SeasonPosterior.courses(season)).places();
    TrimmedScenario part = TrimmedScenario.to(season, SeasonPosterior.day(season, day));
    double[][] first = draws(Streams.of(seed, Streams.Purpose.SENSITIVITY), places.size());
    double[][] second = draws(Streams.of(seed + 1, Streams.Purpose.SENSITIVITY), places.size());
    List<SimulatedColony> colonies = new ArrayList<>();
    for (double[] z : first) {
      colonies.add(part.fitted(priors.draw(z).colony()));
    }
    for (int d = 0; d < places.size(); d++) {
      for (int i = 0; i < DRAWS; i++) {
        double[] mixed = first[i].clone();
        mixed[d] = second[i][d];
        colonies.add(part.fitted(priors.draw(mixed).colony()));
      }
    }
    double[] answers =
        Arrays.stream(
                EnsembleRun.of(
                        part.scenario(),
                        StandardColony.on(season.model(), season.start()),
                        colonies,
                        Set.of(Quantity.INFESTATION),
                        workers,
                        Progress.NONE)
                    .values(Quantity.INFESTATION, day))
            .map(answer)
            .toArray();
    double[] base = Arrays.copyOf(answers, DRAWS);
    List<PriorSensitivity> out = new ArrayList<>();
    for (int d = 0; d < places.size(); d++) {
      double[] anew = Arrays.copyOfRange(answers, (d + 1) * DRAWS, (d + 2) * DRAWS);
      ParticleLayout.Place place = places.get(d);
      out.add(new PriorSensitivity(place.unknown(), place.course(), TotalIndex.of(base, anew)));
    }
    return out;
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
