package broodtide.fit;

import broodtide.control.Control;
import broodtide.engine.ColonyModel;
import broodtide.engine.Ensemble;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StartedColonies;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior.SamplerSettings;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.AbstractList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Seasons of colonies as believed before any wash, which records of one {@link Beginning} share:
 * each record weighs them by its own likelihood and draws its simulated colonies from them
 * (importance sampling). The seasons hang on the beginning alone, never on the records.
 *
 * <p>Safe to share between threads.
 */
final class SeasonBank {
  /** Seasons for each simulated colony that a record asks for. Choice. */
  static final int SEASONS_PER_COLONY = 8;

  /**
   * Effective size, as a share of the simulated colonies asked for, below which seasons of the bank
   * are too few and a sampler goes on from them. Choice.
   */
  static final double ENOUGH = 0.25;

  /** Seasons that a thread weighs at a time. */
  private static final int STRETCH = 2048;

  /** Most days of which figures are kept. */
  private static final int MOST_DAYS = 32;

  /** Bytes of a season's unknowns and of its colony on the first day; measured, rounded up. */
  private static final long SEASON = 1000;

  private final Beginning beginning;
  private final RecordOrigin origin;
  private final ParticleLayout layout;
  private final double[][] z;
  private final double[] dispersions;
  private final StartedColonies started;

  /** Figures by days since the start. */
  private final Map<Integer, Row> rows = new HashMap<>();

  /**
   * What records must have in common to share their seasons.
   *
   * @param model rates and place
   * @param start the first day
   * @param given what was done
   * @param priors what is believed before any wash
   * @param colonies simulated colonies of each record
   * @param seed seed of the random numbers
   */
  record Beginning(
      ColonyModel model,
      LocalDate start,
      List<Control> given,
      Priors priors,
      int colonies,
      long seed) {
    static Beginning of(Scenario past, Priors priors, SamplerSettings effort) {
      return new Beginning(
          past.model(),
          past.start(),
          past.plan().controls(),
          priors,
          effort.particles(),
          effort.seed());
    }
  }

  /** Figures of all seasons on one day. */
  @SuppressWarnings("ArrayRecordComponent") // read only, never compared
  private record Row(float[] infestation, float[] adults) {
    Row(int seasons) {
      this(new float[seasons], new float[seasons]);
    }
  }

  /**
   * Draws the seasons and brings their colonies to the first day.
   *
   * @param beginning what its records have in common
   * @param past one of them
   * @param workers threads; their number does not change the result
   */
  SeasonBank(Beginning beginning, Scenario past, Workers workers) {
    this.beginning = beginning;
    origin = new RecordOrigin(beginning.model(), beginning.start());
    layout = ParticleLayout.of(SeasonPosterior.courses(past), 1);
    int seasons = SEASONS_PER_COLONY * beginning.colonies();
    z = new TemperedSampler(layout.sampled(), seasons, 1, beginning.seed()).chances();
    side(
        workers,
        (from, end) -> {
          for (int i = from; i < end; i++) {
            TemperedSampler.normal(z[i]);
          }
        });
    dispersions = SeasonPosterior.dispersions(beginning.priors(), layout, z);
    started =
        StartedColonies.of(origin.start().about(), colonies(TrimmedScenario.to(past, 1)), workers);
  }

  /**
   * The colonies of a record up to its last day, none of which lies ahead of the washes. They are
   * made by whoever plays them, block by block: all at once would take more memory than the bank.
   */
  private List<SimulatedColony> colonies(TrimmedScenario part) {
    Scenario run = part.scenario();
    BeeYears years = BeeYears.of(run, run.start().plusDays(run.days()));
    return new AbstractList<>() {
      @Override
      public SimulatedColony get(int i) {
        return part.fitted(beginning.priors().draw(z[i], layout).colony(years));
      }

      @Override
      public int size() {
        return z.length;
      }
    };
  }

  /** Bytes that a bank takes at most; 0 where no bank serves so many colonies. */
  static long bytes(int colonies) {
    long seasons = colonies > SeasonBanks.MOST_COLONIES ? 0 : (long) SEASONS_PER_COLONY * colonies;
    return seasons * (SEASON + 2L * Float.BYTES * MOST_DAYS);
  }

  /**
   * {@return whether records of some washes may draw from a bank: within one season of the bees,
   * and with no more colonies than a bank has seasons for}
   */
  static boolean serves(Scenario past, List<Wash> ordered, SamplerSettings effort) {
    return !ordered.isEmpty()
        && effort.particles() <= SeasonBanks.MOST_COLONIES
        && BeeYears.of(past, ordered.get(ordered.size() - 1).date()).seen() == 0;
  }

  /**
   * {@return what washes say of a colony} Where too few seasons fit them, a sampler goes on from
   * all.
   *
   * @param past the record, whose beginning is that of the bank
   * @param ordered washes by date, at least one, all within the first season of the bees
   * @param effort how hard a sampler works
   * @param workers threads; their number does not change the result
   * @param progress is told of work done by a sampler
   */
  SeasonPosterior posterior(
      Scenario past,
      List<Wash> ordered,
      SamplerSettings effort,
      Workers workers,
      Progress progress) {
    double[] logLik = new double[z.length];
    List<Row> then =
        rows(
            past,
            ordered.stream().mapToInt(w -> SeasonPosterior.day(past, w.date())).toArray(),
            workers);
    side(
        workers,
        (from, end) -> {
          for (int w = 0; w < then.size(); w++) {
            weigh(ordered.get(w), then.get(w), logLik, from, end);
          }
        });
    double[] weights = new double[logLik.length];
    boolean any = Arrays.stream(logLik).anyMatch(l -> l > Double.NEGATIVE_INFINITY);
    double evidence = any ? TemperedSampler.weigh(logLik, 1, weights) : Double.NEGATIVE_INFINITY;
    double effective = any ? 1 / Arrays.stream(weights).map(w -> w * w).sum() : 0;
    if (effective < ENOUGH * beginning.colonies()) {
      return sampled(past, ordered, logLik, effort, workers, progress);
    }
    int[] picked = pick(weights);
    TemperedSampler.Sample sample =
        new TemperedSampler.Sample(
            particles(past, ordered, picked),
            Math.min(effective, withoutRepeats(picked)),
            1,
            1,
            evidence);
    return SeasonPosterior.drawn(
        past, origin, beginning.priors(), ordered, sample, started.some(picked));
  }

  /** What a sampler that goes on from all seasons says. */
  private SeasonPosterior sampled(
      Scenario past,
      List<Wash> ordered,
      double[] logLik,
      SamplerSettings effort,
      Workers workers,
      Progress progress) {
    int[] all = IntStream.range(0, z.length).toArray();
    TemperedSampler.Known known = new TemperedSampler.Known(particles(past, ordered, all), logLik);
    return SeasonPosterior.sampled(
        past,
        ordered,
        List.of(),
        beginning.priors(),
        effort,
        origin,
        Optional.of(known),
        workers,
        progress);
  }

  /**
   * Figures of some days. What is not kept is run again from the first day on: a season's days are
   * the same however far it is run.
   */
  private synchronized List<Row> rows(Scenario past, int[] days, Workers workers) {
    int[] missing = Arrays.stream(days).filter(d -> !rows.containsKey(d)).distinct().toArray();
    if (missing.length > 0) {
      if (rows.size() + missing.length > MOST_DAYS) {
        rows.clear();
        missing = Arrays.stream(days).distinct().toArray();
      }
      run(past, missing, workers);
    }
    return Arrays.stream(days).mapToObj(rows::get).toList();
  }

  private void run(Scenario past, int[] days, Workers workers) {
    Map<Integer, Row> seen = new HashMap<>();
    int last = 1;
    for (int day : days) {
      seen.put(day, new Row(z.length));
      last = Math.max(last, day);
    }
    TrimmedScenario part = TrimmedScenario.to(past, last);
    Ensemble.run(
        part.scenario(),
        started,
        colonies(part),
        (first, lanes) ->
            (day, view) -> {
              Row row = seen.get(day);
              for (int l = 0; row != null && l < lanes; l++) {
                row.infestation[first + l] = (float) Quantity.INFESTATION.of(view, l);
                row.adults[first + l] = (float) view.adults(l);
              }
            },
        workers,
        Progress.NONE);
    rows.putAll(seen);
  }

  /** What threads do with seasons from one number to before another. */
  @FunctionalInterface
  private interface Stretch {
    void work(int from, int end);
  }

  private void side(Workers workers, Stretch stretch) {
    int parts = (z.length + STRETCH - 1) / STRETCH;
    workers.run(
        parts,
        p -> stretch.work(p * STRETCH, Math.min(z.length, (p + 1) * STRETCH)),
        Progress.NONE);
  }

  /** Adds the likelihood of a wash. */
  private void weigh(Wash wash, Row row, double[] logLik, int from, int end) {
    WashModel model = new WashModel(wash);
    StrengthNote note = StrengthNote.of(wash);
    double bees = wash.beesOrAssumed();
    for (int i = from; i < end; i++) {
      // a colony with fewer bees than the sample holds cannot have been sampled
      logLik[i] =
          row.adults[i] < bees
              ? Double.NEGATIVE_INFINITY
              : logLik[i]
                  + model.logLikelihood(row.infestation[i] / 100.0, dispersions[i])
                  + note.logLikelihood(row.adults[i]);
    }
  }

  /**
   * Draws seasons by weight. They are shuffled, for draws of one season come one after the other
   * and the first few colonies must stand for all.
   */
  private int[] pick(double[] weights) {
    SplittableRandom random = Streams.of(beginning.seed(), Streams.Purpose.RESAMPLE);
    int[] picked = TemperedSampler.resample(weights, beginning.colonies(), random);
    for (int i = picked.length - 1; i > 0; i--) {
      int other = random.nextInt(i + 1);
      int kept = picked[i];
      picked[i] = picked[other];
      picked[other] = kept;
    }
    return picked;
  }

  /** Colonies less those that repeat others: the sum of counts squared over that of squares. */
  private double withoutRepeats(int[] picked) {
    int[] counts = new int[z.length];
    double squares = 0;
    for (int i : picked) {
      // of n and n + 1 the squares differ by 2 n + 1
      squares += 2.0 * counts[i]++ + 1;
    }
    return (double) picked.length * picked.length / squares;
  }

  /** The unknowns of drawn seasons, as far as washes up to the last of a record saw them. */
  private double[][] particles(Scenario past, List<Wash> ordered, int[] picked) {
    ParticleLayout wanted = SeasonPosterior.layout(past, ordered.get(ordered.size() - 1).date());
    int[] places =
        wanted.places().stream()
            .limit(wanted.sampled())
            .mapToInt(layout.places()::indexOf)
            .toArray();
    return Arrays.stream(picked)
        .mapToObj(i -> Arrays.stream(places).mapToDouble(d -> z[i][d]).toArray())
        .toArray(double[][]::new);
  }
}
