package broodtide.engine;

import broodtide.colony.BeeRates;
import broodtide.control.Control;
import broodtide.control.DroneCombRemoval;
import broodtide.control.HazardSpread;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.control.QueenCaging;
import broodtide.control.Requeening;
import broodtide.control.Split;
import broodtide.control.TrappingComb;
import broodtide.control.WarmthResponse;
import broodtide.measure.Measure;
import broodtide.measure.Measures;
import broodtide.mite.Immigration;
import broodtide.mite.MiteRates;
import broodtide.mite.StockTraits;
import broodtide.season.Climate;
import broodtide.season.Curve;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * A season drawn from a seed: rates anywhere in the lower half of their range, curves, immigration,
 * every kind of control, three colonies and their bees, brood and mites.
 */
final class DrawnSeason {
  static final LocalDate START = LocalDate.of(2027, 4, 1);
  static final int DAYS = 150;
  private static final int COLONIES = 3;

  private final SplittableRandom random;
  final Scenario scenario;
  final List<SimulatedColony> members = new ArrayList<>();
  final ColonyBlock block;
  final List<PlainColony> plain = new ArrayList<>();

  DrawnSeason(int seed, double clumping) {
    random = new SplittableRandom(seed);
    Map<String, Double> mites = rates(MiteRates.class);
    mites.put("clumping", clumping);
    mites.put("shortestStay", seed % 3 == 0 ? 0.0 : random.nextDouble(0.5, 4));
    ColonyModel model =
        new ColonyModel(
            climate(),
            BeeRates.with(rates(BeeRates.class)),
            MiteRates.with(mites),
            stock(),
            new Immigration(List.of(window("--04-10", "--05-15"), window("--05-01", "--06-20"))));
    scenario =
        new Scenario(model, new Plan("all", seed == 0 ? List.of() : controls()), START, DAYS);
    block = new ColonyBlock(COLONIES, clumping);
    for (int l = 0; l < COLONIES; l++) {
      // the second colony has no bees, the third no factor for its second course
      members.add(
          new SimulatedColony(
              in(0.3, 2),
              1,
              1,
              in(0.3, 2),
              in(0, 3),
              in(0, 1),
              l == 2 ? List.of(in(0, 2)) : luck()));
      plain.add(new PlainColony(model, members.get(l).infectivity()));
      fill(l, l == 1 ? 0 : 1);
    }
    block.sumUp();
    for (int l = 0; l < COLONIES; l++) {
      block.startMites[l] = block.mites(l);
    }
  }

  private List<Double> luck() {
    return List.of(in(0, 2), in(0, 2));
  }

  private double in(double min, double max) {
    return random.nextDouble(min, max);
  }

  private Map<String, Double> rates(Class<? extends Record> type) {
    Map<String, Double> values = new HashMap<>();
    for (Measures.Line line : Measures.table(type)) {
      Measure m = line.measure();
      values.put(line.name(), in(m.min(), (m.min() + m.max()) / 2));
    }
    return values;
  }

  private Climate climate() {
    return new Climate(
        "drawn",
        "drawn",
        curve(500, 2500),
        curve(0.01, 0.2),
        curve(0, 1),
        curve(0, 1),
        in(0.0005, 0.02),
        curve(0, 30),
        new YearSpan(MonthDay.of(5, 1), MonthDay.of(7, 31)),
        new YearSpan(MonthDay.of(8, 15), MonthDay.of(10, 1)),
        false,
        List.of("drawn"));
  }

  private Curve curve(double min, double max) {
    List<Curve.Knot> knots = new ArrayList<>();
    for (int month : new int[] {2, 5, 7, 8, 11}) {
      knots.add(new Curve.Knot(MonthDay.of(month, 1), in(min, max)));
    }
    return Curve.through(knots);
  }

  private Immigration.Window window(String from, String to) {
    return new Immigration.Window(
        new YearSpan(MonthDay.parse(from), MonthDay.parse(to)), in(0.1, 20));
  }

  private StockTraits stock() {
    return new StockTraits(in(0, 0.9), in(0.2, 2));
  }

  /** Two combs, three courses and two splits, so that shares and hazards meet on the same day. */
  private List<Control> controls() {
    LocalDate comb = day(1, 10);
    LocalDate cut = comb.plusDays(25);
    return List.of(
        new DroneCombRemoval("comb", comb, List.of(cut, cut.plusDays(9)), in(0.2, 1), in(0.1, 0.5)),
        new DroneCombRemoval("late", day(12, 20), List.of(cut), in(0.2, 1), in(0.1, 0.5)),
        new Split("split", START.plusDays(25), in(0.1, 0.9), in(0.1, 0.9), 7),
        new Split("swarm", START.plusDays(25), in(0.1, 0.9), 0, 0),
        new QueenCaging("cage", day(40, 44), day(50, 60)),
        new MiticideCourse("one", miticide(6, 0.5), day(20, 30), 3, 9),
        new MiticideCourse("two", miticide(4, 0), day(46, 50), 1, 30),
        new MiticideCourse("beyond the end", miticide(20, 0.2), day(140, 148), 2, 21),
        new Requeening("queen", day(70, 75), stock(), 6),
        new TrappingComb("trap", day(85, 90), 20, 12, in(0.2, 1)));
  }

  private LocalDate day(int from, int to) {
    return START.plusDays(random.nextInt(from, to));
  }

  private Miticide miticide(int days, double inCells) {
    return new Miticide(
        "drawn",
        days,
        in(0.05, 1.5),
        inCells * in(0.2, 1),
        in(0, 0.05),
        in(0, 0.3),
        0,
        40,
        Miticide.SupersRule.OFF,
        // within the drawn highs, so that cool, full and hot days all come up
        new WarmthResponse(in(0, 8), in(9, 15), in(16, 25)),
        HazardSpread.USUAL);
  }

  /** Draws one colony and puts the same bees, brood and mites into the block and beside it. */
  private void fill(int lane, double bees) {
    PlainColony p = plain.get(lane);
    for (double[] each : block.adults) {
      each[lane] = bees * in(10, 4000);
    }
    p.sound.hive = block.of(AdultClass.HIVE_SOUND)[lane];
    p.sound.foragers = block.of(AdultClass.FORAGER_SOUND)[lane];
    p.sound.winter = block.of(AdultClass.WINTER)[lane];
    p.overt.hive = block.of(AdultClass.HIVE_OVERT)[lane];
    p.overt.foragers = block.of(AdultClass.FORAGER_OVERT)[lane];
    p.carrier.hive = block.of(AdultClass.HIVE_CARRIER)[lane];
    p.carrier.foragers = block.of(AdultClass.FORAGER_CARRIER)[lane];
    p.onBees = in(1, 800);
    block.phoretic[lane] = p.onBees;
    fill(lane, p.worker, block.openWorker, block.cappedWorker, block.workerMothers, 1000);
    fill(lane, p.drone, block.openDrone, block.cappedDrone, block.droneMothers, 100);
  }

  private void fill(
      int lane,
      PlainColony.Brood brood,
      double[][] open,
      double[][] capped,
      double[][] mothers,
      double most) {
    for (double[] row : open) {
      row[lane] = in(1, most);
      brood.open.addLast(row[lane]);
    }
    for (int i = 0; i < capped.length; i++) {
      capped[i][lane] = in(1, most);
      mothers[i][lane] = in(0, 2) * capped[i][lane];
      brood.capped.addLast(capped[i][lane]);
      brood.mothers.addLast(mothers[i][lane]);
    }
  }
}
