package broodtide.fit;

import broodtide.control.Control;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.engine.Workers;
import broodtide.measure.OutOfRange;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/**
 * What the washes of one colony say of its unknowns: colonies that could have given these washes,
 * all of equal weight. Runs the daily engine inside a {@link TemperedSampler}.
 */
public final class SeasonPosterior {
  /** Most miticide courses whose success can be estimated besides the common unknowns. */
  public static final int MOST_COURSES = ParticleLayout.courses(TemperedSampler.MOST_DIMENSIONS);

  private final Scenario past;
  private final StandardColony start;
  private final Priors priors;
  private final List<Wash> washes;
  private final TemperedSampler.Sample sample;
  private final List<SimulatedColony> members;

  private SeasonPosterior(
      Scenario past,
      StandardColony start,
      Priors priors,
      List<Wash> washes,
      TemperedSampler.Sample sample) {
    this.past = past;
    this.start = start;
    this.priors = priors;
    this.washes = washes;
    this.sample = sample;
    List<Miticide> courses = courses(past);
    this.members = Arrays.stream(sample.z()).map(z -> priors.draw(z, courses).colony()).toList();
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
    List<Wash> ordered = new ArrayList<>(washes);
    ordered.sort(Comparator.comparing(Wash::date));
    for (Wash w : ordered) {
      day(past, w.date());
    }
    StandardColony start = StandardColony.on(past.model(), past.start());
    List<Miticide> courses = courses(past);
    TemperedSampler sampler =
        new TemperedSampler(
            priors.unknowns(courses).size(), effort.particles(), effort.moves(), effort.seed());
    if (ordered.isEmpty()) {
      TemperedSampler.Sample prior =
          new TemperedSampler.Sample(sampler.prior(), effort.particles(), 1, 0, 0);
      return new SeasonPosterior(past, start, priors, List.of(), prior);
    }
    WashLikelihood likelihood = new WashLikelihood(past, start, priors, ordered, workers);
    TemperedSampler.Sample sample;
    try {
      sample = sampler.sample(likelihood, progress);
    } catch (TemperedSampler.NothingFits e) {
      throw new Unexplained(likelihood.firstImpossible(sampler.prior()));
    }
    return new SeasonPosterior(past, start, priors, List.copyOf(ordered), sample);
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
    double[] out = new double[members.size()];
    List<Miticide> courses = courses(past);
    for (int i = 0; i < out.length; i++) {
      out[i] = priors.draw(sample.z()[i], courses).overdispersion;
    }
    return out;
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
    return new SeasonPosterior(past, start, priors, washes, fewer);
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
    return start;
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
    List<Miticide> courses = courses(past);
    List<ParticleLayout.Place> places = ParticleLayout.of(courses.size()).places();
    List<UnknownSummary> out = new ArrayList<>();
    for (int d = 0; d < places.size(); d++) {
      ParticleLayout.Place place = places.get(d);
      if (place.unknown().taught()) {
        out.add(UnknownSummary.of(place, priors.at(place, courses), column(d)));
      }
    }
    return out;
  }

  /**
   * {@return the draws of an unknown in standard normal units, one per colony}
   *
   * @param summary one of {@link #summaries}
   */
  public double[] draws(UnknownSummary summary) {
    return column(
        ParticleLayout.of(courses(past).size())
            .places()
            .indexOf(new ParticleLayout.Place(summary.unknown(), summary.course())));
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
   * @param quantities what to keep
   * @param workers threads
   * @param progress is told of every block done
   * @return the finished run
   */
  public EnsembleRun run(
      Scenario season, Set<Quantity> quantities, Workers workers, Progress progress) {
    return EnsembleRun.of(season, start, membersFor(season), quantities, workers, progress);
  }

  /** The same, stopped early. */
  EnsembleRun run(
      Scenario season, int days, Set<Quantity> quantities, Workers workers, Progress progress) {
    TrimmedScenario part = TrimmedScenario.to(season, days);
    List<SimulatedColony> colonies = membersFor(season).stream().map(part::fitted).toList();
    return EnsembleRun.of(part.scenario(), start, colonies, quantities, workers, progress);
  }

  /**
   * The same for some of the colonies alone, each with the luck that it has among all.
   *
   * @param chosen which of {@link #members}, at least one
   * @param season same start; its plan begins with the past's controls
   * @param quantities what to keep
   * @param workers threads
   * @param progress is told of every block done
   * @return the finished run
   */
  public EnsembleRun run(
      Scenario season, int[] chosen, Set<Quantity> quantities, Workers workers, Progress progress) {
    List<SimulatedColony> all = membersFor(season);
    List<SimulatedColony> some = new ArrayList<>(chosen.length);
    for (int i : chosen) {
      some.add(all.get(i));
    }
    return EnsembleRun.of(season, start, some, quantities, workers, progress);
  }

  private List<SimulatedColony> membersFor(Scenario season) {
    List<Miticide> known = courses(past);
    List<Miticide> wanted = courses(season);
    if (!season.start().equals(past.start())) {
      throw new IllegalArgumentException(
          "the season starts on " + season.start() + ", the record on " + past.start());
    }
    if (wanted.size() <= known.size()) {
      return members;
    }
    List<Control> toCome =
        season.plan().controls().subList(given(), season.plan().controls().size());
    String colony = washes.isEmpty() ? "" : washes.get(0).colony();
    List<double[]> luck = FutureDraws.of(toCome, colony, members.size());
    List<SimulatedColony> out = new ArrayList<>();
    for (int i = 0; i < members.size(); i++) {
      SimulatedColony m = members.get(i);
      List<Double> success = new ArrayList<>(m.success());
      for (int c = 0; c < luck.size(); c++) {
        Miticide substance = wanted.get(known.size() + c);
        success.add(priors.efficacy(substance).at(luck.get(c)[i]));
      }
      out.add(m.with(success));
    }
    return out;
  }

  private int given() {
    return past.plan().controls().size();
  }
}
