package broodtide.fit;

import broodtide.engine.ColonyView;
import broodtide.engine.Ensemble;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.engine.Workers;
import broodtide.wash.BoardCount;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The likelihood of washes and notes of strength, over all particles at once. */
final class WashLikelihood implements TemperedSampler.LogLikelihood {
  private final TrimmedScenario toLastWash;
  private final StandardColony start;
  private final ParticleLayout layout;
  private final BeeYears years;
  private final Priors priors;
  private final List<Wash> washes;
  private final WashModel[] models;
  private final StrengthNote[] notes;
  private final int[] days;
  private final BoardLikelihood boards;
  private final Workers workers;

  /**
   * @param past what was done; what begins after the last wash plays no part
   * @param start the standard year's state on its first day
   * @param washes by date; none where there are boards
   * @param boards mites on boards, in any order
   * @param lastCount the day of the last wash or board
   */
  WashLikelihood(
      Scenario past,
      StandardColony start,
      Priors priors,
      List<Wash> washes,
      List<BoardCount> boards,
      LocalDate lastCount,
      Workers workers) {
    this.start = start.about();
    layout = SeasonPosterior.layout(past, lastCount);
    years = BeeYears.of(past, lastCount);
    this.priors = priors;
    this.washes = List.copyOf(washes);
    this.workers = workers;
    models = washes.stream().map(WashModel::new).toArray(WashModel[]::new);
    notes = washes.stream().map(StrengthNote::of).toArray(StrengthNote[]::new);
    days = washes.stream().mapToInt(w -> SeasonPosterior.day(past, w.date())).toArray();
    this.boards = new BoardLikelihood(past, boards);
    toLastWash = TrimmedScenario.to(past, Math.max(1, SeasonPosterior.day(past, lastCount)));
  }

  @Override
  public void of(double[][] z, double[] out) {
    to(washes.size(), z, out);
  }

  /** The likelihood of the first few washes alone. */
  private void to(int count, double[][] z, double[] out) {
    SimulatedColony[] members = new SimulatedColony[z.length];
    double[] dispersions = new double[z.length];
    for (int i = 0; i < z.length; i++) {
      ColonyDraw draw = priors.draw(z[i], layout);
      members[i] = toLastWash.fitted(draw.colony(years));
      dispersions[i] = draw.overdispersion;
    }
    Arrays.fill(out, 0);
    Ensemble.run(
        toLastWash.scenario(),
        start,
        List.of(members),
        (first, lanes) -> {
          int[] next = {0};
          boolean all = count == washes.size() && boards.last() >= 0;
          BoardLikelihood.@Nullable Tally tally = all ? boards.new Tally(lanes) : null;
          return (day, view) -> {
            if (tally != null) {
              tally.see(day, view, lanes, first, dispersions, out);
            }
            for (; next[0] < count && days[next[0]] == day; next[0]++) {
              for (int l = 0; l < lanes; l++) {
                out[first + l] += ofOne(next[0], view, l, dispersions[first + l]);
              }
            }
          };
        },
        workers,
        Progress.NONE);
  }

  private double ofOne(int wash, ColonyView view, int lane, double dispersion) {
    double adults = view.adults(lane);
    // a colony with fewer bees than the sample holds cannot have been sampled
    if (adults < washes.get(wash).beesOrAssumed()) {
      return Double.NEGATIVE_INFINITY;
    }
    return models[wash].logLikelihood(Quantity.INFESTATION.of(view, lane) / 100, dispersion)
        + notes[wash].logLikelihood(adults);
  }

  /** The first wash that, with those before it, no particle can have given. */
  Wash firstImpossible(double[][] z) {
    double[] out = new double[z.length];
    for (int count = 1; count < washes.size(); count++) {
      to(count, z, out);
      if (Arrays.stream(out).allMatch(v -> v == Double.NEGATIVE_INFINITY)) {
        return washes.get(count - 1);
      }
    }
    return washes.get(washes.size() - 1);
  }
}
