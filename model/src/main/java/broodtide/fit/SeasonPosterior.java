package broodtide.fit;

import broodtide.control.Control;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SharedPast;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.engine.StartedColonies;
import broodtide.engine.Survival;
import broodtide.engine.Watched;
import broodtide.engine.Workers;
import broodtide.measure.OutOfRange;
import broodtide.wash.BoardCount;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What the washes of one colony say of its unknowns: colonies that could have given these washes,
 * all of equal weight. They are drawn from a bank of seasons, see {@link SeasonBanks}, or by a
 * {@link TemperedSampler} with the daily engine inside.
 */
public final class SeasonPosterior {
  /** Most miticide courses whose success can be estimated besides the common unknowns. */
  public static final int MOST_COURSES =
      ParticleLayout.mostCourses(TemperedSampler.MOST_DIMENSIONS, Scenario.LONGEST / 365 + 1);

  private final Scenario past;
  private final RecordOrigin origin;
  private final Priors priors;
  private final List<Wash> washes;
  private final LocalDate lastCount;
  private final ParticleLayout layout;
  private final TemperedSampler.Sample sample;

  /** Colonies of the whole sample, of which these may be the first. */
  private final int whole;

  private final List<SimulatedColony> members;

  /** The members on the first day, once they have been played; the same in every run. */
  private volatile @Nullable StartedColonies started;

  /** Days with which several seasons begin. */
  private final SharedPasts pasts = new SharedPasts();

  /** The members over the days of the last season that was asked for; plans mostly share them. */
  private volatile @Nullable Grown grown;

  private record Grown(BeeYears years, List<SimulatedColony> colonies) {}

  private SeasonPosterior(
      Scenario past,
      RecordOrigin origin,
      Priors priors,
      List<Wash> washes,
      LocalDate lastCount,
      TemperedSampler.Sample sample,
      int whole) {
    this.past = past;
    this.origin = origin;
    this.priors = priors;
    this.washes = washes;
    this.lastCount = lastCount;
    this.layout = layout(past, lastCount);
    this.sample = sample;
    this.whole = whole;
    this.members = colonies(BeeYears.of(past, lastCount));
  }

  /**
   * How hard to work.
   *
   * @param particles colonies in the sample
   * @param moves moves after each tempering step
   * @param seed seed
   */
  public record SamplerSettings(int particles, int moves, long seed) {
    /**
     * {@return 4,096 colonies, three moves a step}
     *
     * @param seed seed of the random numbers
     */
    public static SamplerSettings usual(long seed) {
      return new SamplerSettings(4096, 3, seed);
    }
  }

  /**
   * Infers a colony's unknowns.
   *
   * @param past the rates, and what has been done so far; must start no later than the first wash
   *     and reach the last
   * @param washes washes of one colony, in any order; none gives the prior
   * @param priors what is believed before
   * @param effort how hard to work
   * @param workers threads; their number does not change the result
   * @param progress is told how much of what the washes say has been taken in
   * @return the colonies that fit
   * @throws IllegalArgumentException when a wash lies outside the span
   * @throws Unexplained when no colony of the priors could have given the washes
   */
  public static SeasonPosterior of(
      Scenario past,
      List<Wash> washes,
      Priors priors,
      SamplerSettings effort,
      Workers workers,
      Progress progress) {
    return of(past, washes, List.of(), priors, effort, workers, progress);
  }

  /**
   * Infers a colony's unknowns from washes and from mites on boards together.
   *
   * @param past the rates, and what has been done so far; must start no later than the first count
   *     and reach the last
   * @param washes washes of one colony, in any order; none gives the prior
   * @param boards mites on boards under it while no treatment ran, in any order
   * @param priors what is believed before
   * @param effort how hard to work
   * @param workers threads; their number does not change the result
   * @param progress is told how much of what the counts say has been taken in
   * @return the colonies that fit
   * @throws IllegalArgumentException when a count lies outside the span
   * @throws Unexplained when no colony of the priors could have given the washes
   */
  public static SeasonPosterior of(
      Scenario past,
      List<Wash> washes,
      List<BoardCount> boards,
      Priors priors,
      SamplerSettings effort,
      Workers workers,
      Progress progress) {
    return new SeasonBanks(1).posterior(past, washes, boards, priors, effort, workers, progress);
  }

  /** Washes by date, each within the record. */
  static List<Wash> ordered(Scenario past, List<Wash> washes) {
    List<Wash> ordered = new ArrayList<>(washes);
    ordered.sort(Comparator.comparing(Wash::date));
    for (Wash w : ordered) {
      day(past, w.date());
    }
    return List.copyOf(ordered);
  }

  /** The same by a sampler, of washes in their order; it goes on from draws that are known. */
  static SeasonPosterior sampled(
      Scenario past,
      List<Wash> ordered,
      List<BoardCount> boards,
      Priors priors,
      SamplerSettings effort,
      RecordOrigin origin,
      Optional<TemperedSampler.Known> known,
      Workers workers,
      Progress progress) {
    LocalDate last = lastWash(past, ordered);
    for (BoardCount b : boards) {
      day(past, b.from());
      day(past, b.date());
      last = b.date().isAfter(last) ? b.date() : last;
    }
    ParticleLayout layout = layout(past, last);
    TemperedSampler sampler =
        new TemperedSampler(layout.sampled(), effort.particles(), effort.moves(), effort.seed());
    if (ordered.isEmpty() && boards.isEmpty()) {
      return unwashed(past, origin, priors, sampler, effort);
    }
    WashLikelihood likelihood =
        new WashLikelihood(past, origin.start(), priors, ordered, boards, last, workers);
    TemperedSampler.Sample sample;
    try {
      sample =
          known.isPresent()
              ? sampler.sample(known.get(), likelihood, progress)
              : sampler.sample(likelihood, progress);
    } catch (TemperedSampler.NothingFits e) {
      throw ordered.isEmpty()
          ? new Unexplained(boards.get(0))
          : new Unexplained(likelihood.firstImpossible(sampler.prior()));
    }
    String colony = ordered.isEmpty() ? boards.get(0).colony() : ordered.get(0).colony();
    double[][] z = withAhead(sample.z(), layout, colony);
    return new SeasonPosterior(
        past, origin, priors, ordered, last, sample.with(z), effort.particles());
  }

  /**
   * Colonies that were drawn without a sampler.
   *
   * @param ordered washes by date, at least one
   * @param drawn the sample without what lies ahead of the washes
   * @param started the colonies on the first day
   */
  static SeasonPosterior drawn(
      Scenario past,
      RecordOrigin origin,
      Priors priors,
      List<Wash> ordered,
      TemperedSampler.Sample drawn,
      StartedColonies started) {
    LocalDate last = lastWash(past, ordered);
    double[][] z = withAhead(drawn.z(), layout(past, last), ordered.get(0).colony());
    SeasonPosterior out =
        new SeasonPosterior(past, origin, priors, ordered, last, drawn.with(z), z.length);
    out.started = started;
    return out;
  }

  private static SeasonPosterior unwashed(
      Scenario past,
      RecordOrigin origin,
      Priors priors,
      TemperedSampler sampler,
      SamplerSettings effort) {
    double[][] z = withAhead(sampler.prior(), layout(past, past.start()), "");
    TemperedSampler.Sample prior = new TemperedSampler.Sample(z, effort.particles(), 1, 0, 0);
    return new SeasonPosterior(
        past, origin, priors, List.of(), past.start(), prior, effort.particles());
  }

  /** The same colony before anything was washed. */
  SeasonPosterior beforeWashes(SamplerSettings effort) {
    int unknowns = layout(past, past.start()).sampled();
    TemperedSampler sampler =
        new TemperedSampler(unknowns, effort.particles(), effort.moves(), effort.seed());
    return unwashed(past, origin, priors, sampler, effort);
  }

  /** Particles with what lies ahead of the washes, of which they say nothing. */
  private static double[][] withAhead(double[][] z, ParticleLayout layout, String colony) {
    int sampled = layout.sampled();
    double[][] out = new double[z.length][];
    for (int i = 0; i < out.length; i++) {
      out[i] = Arrays.copyOf(z[i], layout.places().size());
    }
    for (int d = sampled; d < layout.places().size(); d++) {
      double[] ahead = FutureDraws.even(layout.places().get(d).unknown(), colony, z.length);
      for (int i = 0; i < out.length; i++) {
        out[i][d] = ahead[i];
      }
    }
    return out;
  }

  private static LocalDate lastWash(Scenario past, List<Wash> ordered) {
    return ordered.isEmpty() ? past.start() : ordered.get(ordered.size() - 1).date();
  }

  /** What stands where in a particle of a record. */
  static ParticleLayout layout(Scenario past, LocalDate lastWash) {
    return ParticleLayout.of(courses(past), BeeYears.of(past, lastWash), lastWash);
  }

  /** The substance of each miticide course, in the order of the plan. */
  static List<Miticide> courses(Scenario scenario) {
    return scenario.plan().courses().stream().map(MiticideCourse::substance).toList();
  }

  static int day(Scenario scenario, LocalDate date) {
    long day = date.toEpochDay() - scenario.start().toEpochDay();
    if (day < 0 || day > scenario.days()) {
      throw new IllegalArgumentException(
          "the wash of "
              + date
              + " lies outside the record, "
              + scenario.start()
              + " to "
              + scenario.start().plusDays(scenario.days()));
    }
    return Math.toIntExact(day);
  }

  /** {@return the colonies, all of equal weight} */
  public List<SimulatedColony> members() {
    return members;
  }

  /** {@return sizes of the negative binomial of washes, one per member} */
  public double[] dispersions() {
    return dispersions(priors, layout, sample.z());
  }

  static double[] dispersions(Priors priors, ParticleLayout layout, double[][] z) {
    Prior prior = priors.of(Unknown.OVERDISPERSION);
    int place = layout.indexOf(Unknown.OVERDISPERSION, -1, 0);
    return Arrays.stream(z).mapToDouble(row -> prior.at(row[place])).toArray();
  }

  /**
   * {@return the same with fewer colonies, taken evenly through the sample; for work that plays
   * them often}
   *
   * @param most colonies to keep, 16 or more; all are kept when there are no more than that
   */
  public SeasonPosterior thinned(int most) {
    OutOfRange.check("most", most, 16, Integer.MAX_VALUE, "colonies");
    double[][] z = sample.z();
    if (z.length <= most) {
      return this;
    }
    // the first ones: after resampling the order is random, and a prior's Sobol points cover the
    // space evenly only from their start on, not by every so many
    double[][] kept = Arrays.copyOf(z, most);
    TemperedSampler.Sample fewer =
        new TemperedSampler.Sample(
            kept,
            Math.min(most, sample.effectiveSize()),
            sample.acceptance(),
            sample.steps(),
            sample.logEvidence());
    SeasonPosterior out =
        new SeasonPosterior(past, origin, priors, washes, lastCount, fewer, whole);
    StartedColonies known = started;
    out.started = known == null ? null : known.first(most);
    return out;
  }

  /** {@return the sample in standard normal units, with what is known of its quality} */
  public TemperedSampler.Sample sample() {
    return sample;
  }

  /** {@return the washes, by date} */
  public List<Wash> washes() {
    return washes;
  }

  /** {@return what was done up to the last wash} */
  public Scenario past() {
    return past;
  }

  /** What colonies start from on the first day. */
  StandardColony start() {
    return origin.start();
  }

  /** What records that begin alike share. */
  RecordOrigin origin() {
    return origin;
  }

  /** Chances of life at the place. */
  Survival survival() {
    return origin.survival();
  }

  /** The members on the first day. Threads that ask at once may work out the same twice. */
  private StartedColonies started(Workers workers) {
    StartedColonies known = started;
    if (known == null) {
      known = StartedColonies.of(origin.start(), members, workers);
      started = known;
    }
    return known;
  }

  /** {@return the priors} */
  public Priors priors() {
    return priors;
  }

  /**
   * {@return what is left unknown of each unknown that washes can teach, in the order of {@link
   * Unknown}} Infectivity is not among them: what washes say of it is nothing.
   */
  public List<UnknownSummary> summaries() {
    List<UnknownSummary> out = new ArrayList<>();
    for (int d = 0; d < layout.places().size(); d++) {
      ParticleLayout.Place place = layout.places().get(d);
      if (place.unknown().taught()) {
        out.add(UnknownSummary.of(place, priors.at(place, layout.courses()), column(d)));
      }
    }
    return out;
  }

  /**
   * {@return the day of the last wash, or of a board that was taken out later; the first day of the
   * record where there is neither}
   */
  public LocalDate lastWash() {
    return lastCount;
  }

  /**
   * {@return the first day of a season of the bees}
   *
   * @param season number of the season from 0, as in {@link UnknownSummary}
   */
  public LocalDate seasonStart(int season) {
    return season == 0 ? past.start() : BeeYears.of(past, lastWash()).starts().get(season - 1);
  }

  /**
   * {@return the draws of an unknown in standard normal units, one per colony}
   *
   * @param summary one of {@link #summaries}
   */
  public double[] draws(UnknownSummary summary) {
    return column(new ParticleLayout.Place(summary.unknown(), summary.course(), summary.season()));
  }

  private double[] column(ParticleLayout.Place place) {
    return column(layout.places().indexOf(place));
  }

  private double[] column(int d) {
    double[] out = new double[sample.z().length];
    for (int i = 0; i < out.length; i++) {
      out[i] = sample.z()[i][d];
    }
    return out;
  }

  /**
   * Runs the colonies through a season that begins like the past. Each further miticide's success
   * comes from the prior; the same treatment has the same luck in every plan. What differs between
   * trials is the same for the colonies of an apiary that are treated together.
   *
   * @param season same start; its plan begins with the past's controls
   * @param quantities what to keep, on every day
   * @param workers threads
   * @param progress is told of every block done
   * @return the finished run
   */
  public EnsembleRun run(
      Scenario season, Set<Quantity> quantities, Workers workers, Progress progress) {
    return run(season, Watched.daily(quantities), workers, progress);
  }

  /**
   * Runs the colonies through a season that begins like the past. Each further miticide's success
   * comes from the prior; the same treatment has the same luck in every plan. What differs between
   * trials is the same for the colonies of an apiary that are treated together.
   *
   * @param season same start; its plan begins with the past's controls
   * @param watched what to keep
   * @param workers threads
   * @param progress is told of every block done
   * @return the finished run
   */
  public EnsembleRun run(Scenario season, Watched watched, Workers workers, Progress progress) {
    return play(season, membersFor(season), watched, workers, progress);
  }

  /** The same, stopped early. */
  EnsembleRun run(Scenario season, int days, Watched watched, Workers workers, Progress progress) {
    TrimmedScenario part = TrimmedScenario.to(season, days);
    List<SimulatedColony> colonies = membersFor(season).stream().map(part::fitted).toList();
    return play(part.scenario(), colonies, watched, workers, progress);
  }

  private EnsembleRun play(
      Scenario season,
      List<SimulatedColony> colonies,
      Watched watched,
      Workers workers,
      Progress progress) {
    long counted = lastCount.toEpochDay() - season.start().toEpochDay();
    int own = Math.toIntExact(Math.max(0, Math.min(counted, season.days())));
    Optional<SharedPast> shared = pasts.of(season, own, colonies, watched, this::started, workers);
    return shared.isPresent()
        ? EnsembleRun.of(season, shared.get(), colonies, watched, workers, progress)
        : EnsembleRun.of(season, started(workers), colonies, watched, workers, progress);
  }

  /**
   * The same for some of the colonies alone, each with the luck that it has among all.
   *
   * @param chosen which of {@link #members}, at least one
   * @param season same start; its plan begins with the past's controls
   * @param watched what to keep
   * @param workers threads
   * @param progress is told of every block done
   * @return the finished run
   */
  public EnsembleRun run(
      Scenario season, int[] chosen, Watched watched, Workers workers, Progress progress) {
    List<SimulatedColony> all = membersFor(season);
    List<SimulatedColony> some = new ArrayList<>(chosen.length);
    for (int i : chosen) {
      some.add(all.get(i));
    }
    return EnsembleRun.of(season, started(workers).some(chosen), some, watched, workers, progress);
  }

  private List<SimulatedColony> membersFor(Scenario season) {
    List<Miticide> known = courses(past);
    List<Miticide> wanted = courses(season);
    if (!season.start().equals(past.start())) {
      throw new IllegalArgumentException(
          "the season starts on " + season.start() + ", the record on " + past.start());
    }
    List<SimulatedColony> grown = season.days() > past.days() ? grown(season) : members;
    if (wanted.size() <= known.size()) {
      return grown;
    }
    List<double[]> luck = luckToCome(season);
    List<SimulatedColony> out = new ArrayList<>();
    for (int i = 0; i < grown.size(); i++) {
      SimulatedColony m = grown.get(i);
      List<Double> success = new ArrayList<>(m.success());
      for (int c = 0; c < luck.size(); c++) {
        Miticide substance = wanted.get(known.size() + c);
        success.add(priors.efficacy(substance).at(luck.get(c)[i]));
      }
      out.add(m.with(success));
    }
    return out;
  }

  private List<SimulatedColony> grown(Scenario season) {
    BeeYears years = BeeYears.of(season, lastWash());
    Grown known = grown;
    if (known == null || !known.years().equals(years)) {
      known = new Grown(years, colonies(years));
      grown = known;
    }
    return known.colonies();
  }

  /** The colonies over the years of a run; what no wash saw of its seasons is drawn afresh. */
  private List<SimulatedColony> colonies(BeeYears years) {
    double[][] z = sample.z();
    Map<ParticleLayout.Place, double[]> fresh = new LinkedHashMap<>();
    for (ParticleLayout.Place place : ParticleLayout.of(List.of(), years.seasons()).places()) {
      if (place.unknown().ofSeason() && !layout.places().contains(place)) {
        fresh.put(place, draws(place.unknown(), place.season()));
      }
    }
    List<SimulatedColony> out = new ArrayList<>(z.length);
    for (int i = 0; i < z.length; i++) {
      ColonyDraw draw = priors.draw(z[i], layout);
      for (Map.Entry<ParticleLayout.Place, double[]> each : fresh.entrySet()) {
        Unknown unknown = each.getKey().unknown();
        unknown.set(draw, each.getKey().season(), priors.toCome(unknown).at(each.getValue()[i]));
      }
      out.add(draw.colony(years));
    }
    return List.copyOf(out);
  }

  private List<double[]> luckToCome(Scenario season) {
    List<Control> all = season.plan().controls();
    List<Control> toCome = all.subList(Math.min(given(), all.size()), all.size());
    return FutureDraws.of(toCome, name(), members.size());
  }

  /** Draws of how well each course of a season works, in the order of its plan. */
  List<double[]> luck(Scenario season) {
    List<double[]> out = new ArrayList<>();
    for (int c = 0; c < layout.courses().size(); c++) {
      out.add(column(layout.indexOf(Unknown.EFFICACY_FACTOR, c, 0)));
    }
    out.addAll(luckToCome(season));
    return out;
  }

  /** Draws of an unknown of a season, whether washes saw that season or not. */
  double[] draws(Unknown unknown, int season) {
    int place = layout.indexOf(unknown, -1, season);
    return place >= 0
        ? column(place)
        : Arrays.copyOf(FutureDraws.of(unknown, season, name(), whole), sample.z().length);
  }

  private String name() {
    return washes.isEmpty() ? "" : washes.get(0).colony();
  }

  private int given() {
    return past.plan().controls().size();
  }
}
