package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.colony.BeeRates;
import broodtide.control.Control;
import broodtide.control.DroneCombRemoval;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.control.QueenCaging;
import broodtide.control.Requeening;
import broodtide.control.Split;
import broodtide.flow.FlowEngine;
import broodtide.measure.Measure;
import broodtide.measure.Measures;
import broodtide.measure.Unworkable;
import broodtide.mite.Immigration;
import broodtide.mite.MiteRates;
import broodtide.mite.StockTraits;
import broodtide.season.Climate;
import broodtide.season.Curve;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * No valid input, however odd, makes either engine give NaN, an infinity, a negative count or a
 * ledger that does not balance; and the daily engine does what the model's page says. Inputs are a
 * Sobol sample of the whole space of parameters; a failure names its case.
 */
class AnyValidInputTest {
  private static final int DIMENSIONS = 110;
  private static final int DAILY_CASES = 600;
  private static final int FLOW_CASES = 24;
  private static final double FLOW_TOLERANCE = 1e-7;
  private static final LocalDate START = LocalDate.of(2027, 4, 1);
  private static final int DAYS = 420;

  /** Share by which the engine may be off the page, by its own exponential, after all days. */
  private static final double SHARE = 1e-5;

  /** Mites per 100 bees above which colonies may end with as many by more than one way. */
  private static final double MOST = 60;

  /** Share within which both searches for a start meet the infestation asked for. */
  private static final double SOUGHT = 1e-6;

  /** Below this many bees or mites rounding is all there is. */
  private static final double TRACE = 1e-6;

  @Test
  void dailyEngine() {
    daily(1, DAILY_CASES / 8);
  }

  @Test
  @Tag("slow")
  void dailyEngineInFull() {
    daily(DAILY_CASES / 8 + 1, DAILY_CASES);
  }

  @Test
  @Tag("slow")
  void flowEngine() {
    int ran = 0;
    for (int i = 1; i <= FLOW_CASES; i++) {
      ran += runFlow(i) ? 1 : 0;
    }
    assertThat(ran).as("cases in which a colony lives").isGreaterThan(FLOW_CASES / 3);
  }

  private static void daily(int first, int last) {
    int ran = 0;
    for (int i = first; i <= last; i++) {
      ran += runDaily(i) ? 1 : 0;
    }
    assertThat(ran).as("cases in which a colony lives").isGreaterThan((last - first) / 3);
  }

  /** Runs one case alone; put the number of one that failed here. */
  @ParameterizedTest
  @ValueSource(ints = 11)
  void replay(int number) {
    assertThat(runDaily(number)).as("a colony lives").isTrue();
    assertThat(runFlow(number)).as("a colony lives").isTrue();
    neighboursDoNotMatter(number);
    assertThat(doesWhatThePageSays(number)).as("the colony can start as it should").isTrue();
  }

  @Test
  @Tag("slow")
  void theDailyEngineDoesWhatThePageSays() {
    int ran = 0;
    for (int i = 1; i < 240; i++) {
      if (lives(new Case(i))) {
        neighboursDoNotMatter(i);
        ran += doesWhatThePageSays(i) ? 1 : 0;
      }
    }
    assertThat(ran).isGreaterThan(10);
  }

  /** The same to the last bit as the last of more colonies than a block holds, on three threads. */
  private static void neighboursDoNotMatter(int number) {
    Case c = new Case(number);
    List<SimulatedColony> members = new ArrayList<>();
    for (int i = 0; i < Ensemble.BLOCK + 4; i++) {
      members.add(
          new SimulatedColony(0.05 + 0.02 * i, 1 + i % 3, 2 * i, i % 4, i % 7, List.of(0.03 * i)));
    }
    members.add(c.member);
    Map<Quantity, double[]> among = new EnumMap<>(Quantity.class);
    for (Quantity q : Quantity.values()) {
      among.put(q, new double[DAYS + 1]);
    }
    int own = members.size() - 1;
    StandardColony start = StandardColony.on(c.scenario.model(), START);
    try (Workers workers = new Workers(3)) {
      Ensemble.run(
          c.scenario,
          start,
          members,
          (first, count) ->
              (day, view) -> {
                if (own >= first && own < first + count) {
                  among.forEach((q, values) -> values[day] = q.of(view, own - first));
                }
              },
          workers,
          Progress.NONE);
    }
    Trajectory alone = DailyEngine.run(c.scenario, c.member);
    among.forEach(
        (q, values) -> assertThat(values).as("case %d, %s", number, q).isEqualTo(alone.of(q)));
  }

  /**
   * The engine beside {@link PlainColony}, which shares no line with it.
   *
   * @return false where no colony can live through the days before the start and end with so many
   *     mites, or where several may: the page leaves open what such a one starts from
   */
  private static boolean doesWhatThePageSays(int number) {
    Case c = new Case(number);
    if (c.member.infestation() > MOST || c.member.immigration() / c.member.startSize() > 100) {
      return false;
    }
    PlainColony plain = PlainStart.of(c.scenario.model(), c.member, START);
    if (Math.abs(plain.per100() / c.member.infestation() - 1) > SOUGHT) {
      return false;
    }
    PlainCalendar calendar = new PlainCalendar(c.scenario, c.member);
    Trajectory engine = DailyEngine.run(c.scenario, c.member);
    for (int day = 0; day <= DAYS; day++) {
      String where = "case " + number + ", day " + day + ": ";
      near(where + "adults", engine.of(Quantity.ADULTS)[day], plain.adults());
      near(where + "winter bees", engine.of(Quantity.WINTER_BEES)[day], plain.sound.winter);
      near(
          where + "worker cells",
          engine.of(Quantity.WORKER_CELLS)[day],
          PlainColony.total(plain.worker.capped));
      near(where + "mites on bees", engine.of(Quantity.MITES_ON_BEES)[day], plain.onBees);
      near(where + "mites", engine.of(Quantity.MITES)[day], plain.mites());
      near(where + "killed", engine.ledger(day).killed(), plain.killed);
      near(where + "daughters", engine.ledger(day).daughters(), plain.daughters);
      plain.run(calendar.on(START.plusDays(day)));
    }
    return true;
  }

  private static void near(String what, double actual, double expected) {
    assertThat(Math.abs(actual - expected))
        .as("%s: %s beside %s", what, actual, expected)
        .isLessThanOrEqualTo(SHARE * Math.abs(expected) + TRACE);
  }

  private static boolean runDaily(int number) {
    Case c = new Case(number);
    return lives(c) && sound("daily case " + number, DailyEngine.run(c.scenario, c.member), 1e-9);
  }

  private static boolean runFlow(int number) {
    Case c = new Case(number);
    return lives(c)
        && sound(
            "flow case " + number,
            FlowEngine.run(c.scenario, c.member, 1 + number % 17, FLOW_TOLERANCE).trajectory(),
            10 * FLOW_TOLERANCE);
  }

  private static boolean lives(Case c) {
    try {
      StandardColony.on(c.scenario.model(), START);
      return true;
    } catch (Unworkable noColonyHere) {
      assertThat(noColonyHere).hasMessageContaining("no colony lives");
      return false;
    }
  }

  private static boolean sound(String which, Trajectory t, double imbalance) {
    for (Quantity q : Quantity.values()) {
      double[] values = t.of(q);
      for (int day = 0; day < values.length; day++) {
        double v = values[day];
        if (!(v >= 0 && v < 1e12)) {
          throw new AssertionError(which + ": " + q + " is " + v + " on day " + day);
        }
      }
    }
    for (int day = 0; day <= t.days(); day++) {
      if (!(t.ledger(day).imbalance() < imbalance)) {
        throw new AssertionError(which + ": ledger on day " + day + " " + t.ledger(day));
      }
    }
    return true;
  }

  /** One point of the sample turned into an input. */
  private static final class Case {
    private final double[] u;
    private int next;
    final Scenario scenario;
    final SimulatedColony member;

    Case(int number) {
      SobolSequenceGenerator sobol = new SobolSequenceGenerator(DIMENSIONS);
      u = sobol.skipTo(number);
      BeeRates bees = BeeRates.with(anyOf(BeeRates.class));
      MiteRates mites = MiteRates.with(anyOf(MiteRates.class));
      Climate climate =
          new Climate(
              "any",
              "any",
              curve(0, 4000),
              curve(0, 0.5),
              curve(0, 1),
              curve(0, 1),
              in(0.0005, 0.05),
              curve(-40, 45),
              span(),
              span(),
              false,
              List.of("drawn"));
      Immigration immigration =
          new Immigration(List.of(new Immigration.Window(span(), in(0, 1000))));
      ColonyModel model =
          new ColonyModel(climate, bees, mites, new StockTraits(in(0, 1), in(0, 3)), immigration);
      List<Double> success = List.of(in(0, 5), in(0, 5));
      member =
          new SimulatedColony(
              in(0.05, 3), in(0.01, 5), in(0, 300), in(0, 3), in(0, 100), in(0, 1), success);
      scenario = new Scenario(model, new Plan("any", controls()), START, DAYS);
    }

    private double in(double min, double max) {
      return min + (max - min) * u[next++];
    }

    private Map<String, Double> anyOf(Class<? extends Record> type) {
      Map<String, Double> values = new HashMap<>();
      for (Measures.Line line : Measures.table(type)) {
        Measure m = line.measure();
        values.put(line.name(), in(m.min(), m.max()));
      }
      return values;
    }

    private Curve curve(double min, double max) {
      List<Curve.Knot> knots = new ArrayList<>();
      for (int month : new int[] {1, 4, 7, 10}) {
        knots.add(new Curve.Knot(MonthDay.of(month, 1), in(min, max)));
      }
      return Curve.through(knots);
    }

    private YearSpan span() {
      LocalDate from = START.plusDays((long) in(0, 364));
      return new YearSpan(MonthDay.from(from), MonthDay.from(from.plusDays((long) in(0, 200))));
    }

    private LocalDate day(int from, int to) {
      return START.plusDays((long) in(from, to));
    }

    private List<Control> controls() {
      LocalDate comb = day(0, 60);
      LocalDate cage = day(0, 100);
      return List.of(
          new DroneCombRemoval(
              "comb", comb, List.of(comb.plusDays(1 + (long) in(0, 40))), in(0, 1), in(0, 0.5)),
          new QueenCaging("cage", cage, cage.plusDays((long) in(0, 60))),
          new MiticideCourse("one", miticide(), day(0, 300), 1 + (int) in(0, 5), 30),
          new MiticideCourse("two", miticide(), day(0, 300), 1, 30),
          new Split("split", day(165, 200), in(0, 0.95), in(0, 1), (int) in(0, 60)),
          new Requeening(
              "queen", day(265, 300), new StockTraits(in(0, 1), in(0, 3)), (int) in(0, 60)));
    }

    private Miticide miticide() {
      return new Miticide(
          "any",
          1 + (int) in(0, 29),
          in(0, 20),
          in(0, 20),
          in(0, 1),
          in(0, 1),
          in(-40, 20),
          in(20, 60),
          Miticide.SupersRule.OFF);
    }
  }
}
