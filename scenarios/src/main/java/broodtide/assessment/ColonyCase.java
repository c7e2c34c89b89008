package broodtide.assessment;

import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.Progress;
import broodtide.engine.Scenario;
import broodtide.engine.SpringLow;
import broodtide.engine.Survival;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.fit.SeasonBanks;
import broodtide.fit.SeasonPosterior;
import broodtide.measure.Unworkable;
import broodtide.wash.BoardCount;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * Everything known of one colony, and how far ahead to look.
 *
 * <p>Immutable, and safe to share between threads; what the place's winter is like is worked out
 * once.
 */
public final class ColonyCase {
  /** Name of the plan that holds what was already done. */
  private static final String DONE = "done";

  /** The yard where none is named: all colonies without one stand together. */
  static final String NO_YARD = "";

  private final String colony;
  private final ColonyModel model;
  private final LocalDate start;
  private final LocalDate now;
  private final LocalDate until;
  private final List<Wash> washes;
  private final List<Control> given;
  private final ThresholdSet thresholds;
  private final Priors priors;
  private final WinterAhead winter;
  private final String yard;
  private final List<BoardCount> boards;

  /**
   * Copies the lists and checks the order of the days.
   *
   * @param colony its name
   * @param model rates and place
   * @param start first day that is followed
   * @param now the decision date; what is not {@code given} happens from here on
   * @param until last day that is looked at
   * @param washes washes up to now
   * @param given controls already carried out
   * @param thresholds thresholds to hold the colony to
   * @param priors what is believed before the washes
   * @throws Unworkable when start, now and until do not follow one another, when they span more
   *     than {@link Scenario#LONGEST} days, or when more than {@link SeasonPosterior#MOST_COURSES}
   *     miticides were given
   */
  public ColonyCase(
      String colony,
      ColonyModel model,
      LocalDate start,
      LocalDate now,
      LocalDate until,
      List<Wash> washes,
      List<Control> given,
      ThresholdSet thresholds,
      Priors priors) {
    this(
        colony,
        model,
        start,
        now,
        until,
        washes,
        given,
        thresholds,
        priors,
        WinterAhead.of(model, now),
        NO_YARD,
        List.of());
  }

  /** The same with the winter that others of the same place and decision date share. */
  ColonyCase(
      String colony,
      ColonyModel model,
      LocalDate start,
      LocalDate now,
      LocalDate until,
      List<Wash> washes,
      List<Control> given,
      ThresholdSet thresholds,
      Priors priors,
      WinterAhead winter,
      String yard,
      List<BoardCount> boards) {
    this.colony = colony;
    this.model = model;
    this.start = start;
    this.now = now;
    this.until = until;
    this.washes = List.copyOf(washes);
    this.given = List.copyOf(given);
    this.thresholds = thresholds;
    this.priors = priors;
    this.winter = winter;
    this.yard = yard;
    this.boards = List.copyOf(boards);
    if (now.isBefore(start) || !until.isAfter(now)) {
      throw new Unworkable(
          "colony \""
              + colony
              + "\": the forecast must end after it begins; it begins on "
              + now
              + " and ends on "
              + until
              + "; give a later day with --until");
    }
    long days = ChronoUnit.DAYS.between(start, until) + 1;
    if (days > Scenario.LONGEST) {
      throw new Unworkable(
          "colony \""
              + colony
              + "\": its record and the forecast run from "
              + start
              + " to "
              + until
              + ", "
              + days
              + " days; expected "
              + Scenario.LONGEST
              + " (ten years); correct the year of its first wash or treatment, or leave out what"
              + " is older");
    }
    long courses = given.stream().filter(c -> c.course().isPresent()).count();
    if (courses > SeasonPosterior.MOST_COURSES) {
      throw new Unworkable(
          "colony \""
              + colony
              + "\" was given "
              + courses
              + " treatments with miticides; expected "
              + SeasonPosterior.MOST_COURSES
              + ", for how well each worked is estimated; write one that was given several times as"
              + " one line with its applications, or leave out the oldest");
    }
  }

  /** The winter that is judged. */
  WinterAhead winter() {
    return winter;
  }

  /** {@return its name} */
  public String colony() {
    return colony;
  }

  /** {@return the yard in which it stands; empty where none is named} */
  public String yard() {
    return yard;
  }

  /**
   * {@return the same colony in a yard, with whose other colonies it shares a part of its season}
   *
   * @param other name of the yard
   */
  public ColonyCase in(String other) {
    return but(c -> c.yard = other);
  }

  /** {@return mites on boards under it up to now} */
  public List<BoardCount> boards() {
    return boards;
  }

  /**
   * {@return the same colony with mites counted on boards besides its washes}
   *
   * @param counted mites on boards
   * @throws Unworkable when a board was taken out after the decision date, or when a treatment with
   *     a miticide ran while it lay
   */
  public ColonyCase withBoards(List<BoardCount> counted) {
    LocalDate first = start;
    for (BoardCount b : counted) {
      if (b.date().isAfter(now)) {
        throw new Unworkable(
            board(b)
                + " was taken out after the decision date, "
                + now
                + "; decide on a later day, or take the row out");
      }
      given.stream()
          .flatMap(c -> c.course().stream())
          .filter(c -> !c.from().isAfter(b.date()) && !c.to().isBefore(b.from()))
          .findFirst()
          .ifPresent(
              c -> {
                throw new Unworkable(
                    board(b)
                        + " lay while "
                        + c.name()
                        + " ran, from "
                        + c.from()
                        + " to "
                        + c.to()
                        + "; its mites speak of the treatment and not of the colony; take the row"
                        + " out");
              });
      first = b.from().isBefore(first) ? b.from() : first;
    }
    LocalDate since = first;
    return but(
        c -> {
          c.start = since;
          c.boards = counted;
        });
  }

  private static String board(BoardCount b) {
    return "the board under colony \"" + b.colony() + "\" from " + b.from() + " to " + b.date();
  }

  /** {@return rates and place} */
  public ColonyModel model() {
    return model;
  }

  /** {@return first day that is followed} */
  public LocalDate start() {
    return start;
  }

  /** {@return the decision date; what is not {@link #given} happens from here on} */
  public LocalDate now() {
    return now;
  }

  /** {@return last day that is looked at} */
  public LocalDate until() {
    return until;
  }

  /** {@return washes up to now} */
  public List<Wash> washes() {
    return washes;
  }

  /** {@return controls already carried out} */
  public List<Control> given() {
    return given;
  }

  /** {@return thresholds to hold the colony to} */
  public ThresholdSet thresholds() {
    return thresholds;
  }

  /** {@return what is believed before the washes} */
  public Priors priors() {
    return priors;
  }

  /**
   * {@return the treatment threshold on a day, mites per 100 bees as a wash shows them; empty when
   * there is none}
   *
   * @param day the day
   */
  public Optional<Double> thresholdOn(LocalDate day) {
    return stages().thresholdOn(thresholds, day);
  }

  /** {@return whether there is a treatment threshold on any day from the decision on} */
  public boolean hasThreshold() {
    return now.datesUntil(until.plusDays(1)).anyMatch(d -> thresholdOn(d).isPresent());
  }

  /** {@return the stages of the place's year} */
  public YearStages stages() {
    return new YearStages(model.climate());
  }

  /**
   * {@return the day on which the winter bees have been raised of the winter that is judged, or the
   * last day of the forecast when that comes first}
   */
  public LocalDate winterBeesRaised() {
    LocalDate day = stages().winterBeesRaised(now);
    return day.isAfter(until) ? until : day;
  }

  /** {@return whether winter bees of the winter that is judged grow up within the forecast} */
  public boolean raisesWinterBees() {
    return !winterBroodDays().isEmpty();
  }

  /** {@return the days within the forecast on which winter bees of that winter are raised} */
  List<LocalDate> winterBroodDays() {
    LocalDate from = stages().decidesFrom(now);
    LocalDate end = winterBeesRaised().plusDays(1);
    return from.isBefore(end)
        ? from.datesUntil(end).filter(model.climate().winterBees()::holds).toList()
        : List.of();
  }

  /**
   * {@return the day in spring on which a colony of the place has the fewest bees; empty when the
   * look ahead ends before it, or where winter losses cannot be told}
   */
  public Optional<SpringLow> springLow() {
    if (!Survival.hasWinter(model.climate())) {
      return Optional.empty();
    }
    return Optional.of(winter.low()).filter(spring -> !spring.day().isAfter(until));
  }

  /**
   * {@return a plan with what was already done put first}
   *
   * @param plan what may be done from the day of decision on
   */
  public Plan withGiven(Plan plan) {
    return new Plan(plan.name(), Stream.concat(given.stream(), plan.controls().stream()).toList());
  }

  /**
   * {@return the season under a plan, what was already done included}
   *
   * @param plan what is done from the day of decision on
   */
  public Scenario season(Plan plan) {
    return Scenario.until(model, withGiven(plan), start, until);
  }

  /**
   * {@return what the washes say of the colony}
   *
   * @param effort how hard to work
   * @param workers threads; their number does not change the result
   * @param progress is told of work done
   */
  public SeasonPosterior posterior(
      SeasonPosterior.SamplerSettings effort, Workers workers, Progress progress) {
    return posterior(effort, new SeasonBanks(1), workers, progress);
  }

  /** The same, with seasons that it shares with others that began like it. */
  SeasonPosterior posterior(
      SeasonPosterior.SamplerSettings effort,
      SeasonBanks banks,
      Workers workers,
      Progress progress) {
    return banks.posterior(past(), washes, boards, priors, effort, workers, progress);
  }

  private Scenario past() {
    return season(new Plan(DONE, List.of()));
  }

  /**
   * {@return the same colony with the decision put off to another day}
   *
   * @param day the new day of decision
   */
  public ColonyCase decidingOn(LocalDate day) {
    return but(
        c -> {
          c.now = day;
          c.winter = winter.from(day);
        });
  }

  /**
   * {@return the same colony with one more control that was already carried out}
   *
   * @param done a control that was carried out before it
   */
  public ColonyCase withGiven(Control done) {
    List<Control> all = Stream.concat(given.stream(), Stream.of(done)).toList();
    return but(c -> c.given = all);
  }

  /**
   * {@return the same colony with other beliefs before the washes}
   *
   * @param other what is believed before any wash
   */
  public ColonyCase with(Priors other) {
    return but(c -> c.priors = other);
  }

  /**
   * {@return the same colony at other rates}
   *
   * @param other rates and place
   */
  ColonyCase with(ColonyModel other) {
    return but(
        c -> {
          c.model = other;
          c.winter = WinterAhead.of(other, now);
        });
  }

  /**
   * {@return the same colony looked at up to another day}
   *
   * @param day the new last day, after the day of decision
   */
  public ColonyCase until(LocalDate day) {
    return but(c -> c.until = day);
  }

  /**
   * {@return the same colony looked at as far as plans are by themselves: to the spring that shows
   * whether it came through, or to the winter bees where losses cannot be told; as it is where its
   * record leaves no room for that}
   */
  public ColonyCase throughWinter() {
    LocalDate enough =
        Survival.hasWinter(model.climate()) ? winter.low().day() : stages().winterBeesRaised(now);
    boolean fits = ChronoUnit.DAYS.between(start, enough) + 1 <= Scenario.LONGEST;
    return enough.isAfter(now) && fits ? until(enough) : this;
  }

  /** The same colony but for what is changed. */
  private ColonyCase but(Consumer<Draft> change) {
    Draft draft = new Draft(this);
    change.accept(draft);
    return draft.made();
  }

  /** A case in the making, which begins as another. */
  private static final class Draft {
    private final String colony;
    private ColonyModel model;
    private LocalDate start;
    private LocalDate now;
    private LocalDate until;
    private final List<Wash> washes;
    private List<Control> given;
    private final ThresholdSet thresholds;
    private Priors priors;
    private WinterAhead winter;
    private String yard;
    private List<BoardCount> boards;

    private Draft(ColonyCase c) {
      colony = c.colony;
      model = c.model;
      start = c.start;
      now = c.now;
      until = c.until;
      washes = c.washes;
      given = c.given;
      thresholds = c.thresholds;
      priors = c.priors;
      winter = c.winter;
      yard = c.yard;
      boards = c.boards;
    }

    private ColonyCase made() {
      return new ColonyCase(
          colony,
          model,
          start,
          now,
          until,
          washes,
          given,
          thresholds,
          priors,
          winter,
          yard,
          boards);
    }
  }
}
