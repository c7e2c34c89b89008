package broodtide.flow;

import broodtide.colony.BeeRates;
import broodtide.engine.AdultClass;
import broodtide.engine.ColonyBlock;
import broodtide.engine.ColonyModel;
import broodtide.engine.Schedule;
import broodtide.engine.SeasonChange;
import broodtide.engine.SimulatedColony;
import broodtide.mite.MiteRates;
import java.util.Arrays;
import java.util.function.BiConsumer;

/**
 * A colony in continuous time, read from sections 2 to 5 and 7 of SCIENCE.md and written apart from
 * the flow engine: plain fields, the powers of the page, steps of one length.
 */
final class PlainFlow {
  private final ColonyModel model;
  private final BeeRates bees;
  private final MiteRates mites;
  private final Schedule schedule;
  private final SimulatedColony member;
  private final int stages;

  PlainFlow(ColonyModel model, Schedule schedule, SimulatedColony member, int stages) {
    this.model = model;
    this.bees = model.bees();
    this.mites = model.mites();
    this.schedule = schedule;
    this.member = member;
    this.stages = stages;
  }

  /** Bees, cells and mites, or how fast each of them changes. */
  static final class State {
    double hive;
    double hiveOvert;
    double hiveCarrier;
    double forager;
    double foragerOvert;
    double foragerCarrier;
    double winter;
    double onBees;
    double daughters;
    double immigrants;
    double diedOnBees;
    double diedInCells;
    double killed;
    double cutOut;
    double movedAway;
    final double[] openWorker;
    final double[] openDrone;
    final double[] cappedWorker;
    final double[] cappedDrone;
    final double[] inWorker;
    final double[] inDrone;

    State(int stages) {
      openWorker = new double[stages];
      openDrone = new double[stages];
      cappedWorker = new double[stages];
      cappedDrone = new double[stages];
      inWorker = new double[stages];
      inDrone = new double[stages];
    }

    double adults() {
      return hive + hiveOvert + hiveCarrier + forager + foragerOvert + foragerCarrier + winter;
    }

    double mites() {
      return onBees + total(inWorker) + total(inDrone);
    }

    /** The same figures where the engine has them. */
    double[] vector(FlowState at) {
      double[] y = new double[at.vector().length];
      double[] adults = {hive, hiveOvert, hiveCarrier, forager, foragerOvert, foragerCarrier};
      System.arraycopy(adults, 0, y, AdultClass.HIVE_SOUND.ordinal(), adults.length);
      y[AdultClass.WINTER.ordinal()] = winter;
      y[FlowState.PHORETIC] = onBees;
      y[FlowState.DAUGHTERS] = daughters;
      y[FlowState.IMMIGRANTS] = immigrants;
      y[FlowState.DIED_ON_BEES] = diedOnBees;
      y[FlowState.DIED_IN_CELLS] = diedInCells;
      y[FlowState.KILLED] = killed;
      y[FlowState.CUT_OUT] = cutOut;
      y[FlowState.MOVED_AWAY] = movedAway;
      put(at, (chain, first) -> System.arraycopy(chain, 0, y, first, chain.length));
      return y;
    }

    static State of(double[] y, FlowState at) {
      State s = new State(at.stages);
      s.hive = y[AdultClass.HIVE_SOUND.ordinal()];
      s.hiveOvert = y[AdultClass.HIVE_OVERT.ordinal()];
      s.hiveCarrier = y[AdultClass.HIVE_CARRIER.ordinal()];
      s.forager = y[AdultClass.FORAGER_SOUND.ordinal()];
      s.foragerOvert = y[AdultClass.FORAGER_OVERT.ordinal()];
      s.foragerCarrier = y[AdultClass.FORAGER_CARRIER.ordinal()];
      s.winter = y[AdultClass.WINTER.ordinal()];
      s.onBees = y[FlowState.PHORETIC];
      s.daughters = y[FlowState.DAUGHTERS];
      s.immigrants = y[FlowState.IMMIGRANTS];
      s.diedOnBees = y[FlowState.DIED_ON_BEES];
      s.diedInCells = y[FlowState.DIED_IN_CELLS];
      s.killed = y[FlowState.KILLED];
      s.cutOut = y[FlowState.CUT_OUT];
      s.movedAway = y[FlowState.MOVED_AWAY];
      s.put(at, (chain, first) -> System.arraycopy(y, first, chain, 0, chain.length));
      return s;
    }

    private void put(FlowState at, BiConsumer<double[], Integer> each) {
      each.accept(openWorker, at.openWorker);
      each.accept(openDrone, at.openDrone);
      each.accept(cappedWorker, at.cappedWorker);
      each.accept(cappedDrone, at.cappedDrone);
      each.accept(inWorker, at.workerMothers);
      each.accept(inDrone, at.droneMothers);
    }
  }

  static double total(double[] chain) {
    return Arrays.stream(chain).sum();
  }

  /** A block's first colony; each day of brood is cut into as many slices as there are stages. */
  State start(ColonyBlock b) {
    State s = new State(stages);
    s.hive = b.bees(AdultClass.HIVE_SOUND, 0);
    s.hiveOvert = b.bees(AdultClass.HIVE_OVERT, 0);
    s.hiveCarrier = b.bees(AdultClass.HIVE_CARRIER, 0);
    s.forager = b.bees(AdultClass.FORAGER_SOUND, 0);
    s.foragerOvert = b.bees(AdultClass.FORAGER_OVERT, 0);
    s.foragerCarrier = b.bees(AdultClass.FORAGER_CARRIER, 0);
    s.winter = b.bees(AdultClass.WINTER, 0);
    s.onBees = b.mitesOnBees(0);
    slice(b.openWorker, s.openWorker);
    slice(b.openDrone, s.openDrone);
    slice(b.cappedWorker, s.cappedWorker);
    slice(b.cappedDrone, s.cappedDrone);
    slice(b.workerMothers, s.inWorker);
    slice(b.droneMothers, s.inDrone);
    return s;
  }

  /** The oldest day stands first in a ring, the youngest stage first in a chain. */
  private void slice(double[][] ring, double[] chain) {
    for (int day = 0; day < ring.length; day++) {
      int older = ring.length - 1 - day;
      for (int i = 0; i < stages; i++) {
        chain[(older * stages + i) / ring.length] += ring[day][0] / stages;
      }
    }
  }

  /** How fast everything changes at a time, with the plan's settings of a day. */
  State change(State s, double t, int day) {
    State d = new State(stages);
    int last = stages - 1;
    double year = (t - 0.5) / schedule.yearLength + schedule.yearShare;
    SeasonChange season = member.changeOn(schedule.start.plusDays(day));
    double n = s.adults();
    double perBee = Math.max(1, n);

    double laid =
        schedule.noLaying[day] ? 0 : member.strength() * model.climate().laying().at(year);
    double eggs = n > 0 ? laid * n / (n + bees.halfLayingAdults()) : 0;
    double drones = Math.max(model.climate().droneShare().at(year), schedule.droneFloor[day]);
    double notLost = 1 - schedule.broodCost[day];
    double cw = notLost * s.openWorker[last] * stages / 9.0;
    double cd = notLost * s.openDrone[last] * stages / 10.0;
    flow(d.openWorker, s.openWorker, eggs * (1 - drones) * bees.workerSurvival(), 9, 0);
    flow(d.openDrone, s.openDrone, eggs * drones * bees.droneSurvival(), 10, 0);
    flow(d.cappedWorker, s.cappedWorker, cw, 12, 0);
    flow(d.cappedDrone, s.cappedDrone, cd, 14, 0);

    double killOnBees = 0;
    double killInCells = 0;
    for (int c = 0; c < schedule.courses.size(); c++) {
      double success = c < member.success().size() ? member.success().get(c) : 1;
      Schedule.Course course = schedule.courses.get(c);
      killOnBees += success * course.action()[day] * course.onBees();
      killInCells += success * course.action()[day] * course.inCells();
    }
    double drawWorker = bees.beesPerGram() * mites.workerInvasion() * cw / perBee;
    double drawDrone = bees.beesPerGram() * mites.droneInvasion() * cd / perBee;
    double x = drawWorker + drawDrone;
    double h = x / (1 + mites.shortestStay() * x);
    flow(d.inWorker, s.inWorker, x > 0 ? h * s.onBees * drawWorker / x : 0, 12, killInCells);
    flow(d.inDrone, s.inDrone, x > 0 ? h * s.onBees * drawDrone / x : 0, 14, killInCells);

    double k = mites.clumping();
    double cells = s.cappedWorker[last] * stages / 12.0;
    double mothers = s.inWorker[last] * stages / 12.0;
    double droneMothers = s.inDrone[last] * stages / 14.0;
    double m = s.inWorker[last] / s.cappedWorker[last];
    double md = s.inDrone[last] / s.cappedDrone[last];
    double young = member.vigour() * season.growth() * stock(t);
    double daughters =
        mothers * young * mites.workerDaughters() * power(mites.workerCrowding() * m, k, k + 1);
    double droneDaughters =
        droneMothers * young * mites.droneDaughters() * power(mites.droneCrowding() * md, k, k + 1);
    double out =
        mothers * mites.workerMothersBack()
            + droneMothers * mites.droneMothersBack()
            + daughters * (1 - mites.workerDaughtersLost())
            + droneDaughters * (1 - mites.droneDaughtersLost());
    d.daughters = daughters + droneDaughters;
    d.diedInCells = mothers + droneMothers + daughters + droneDaughters - out;

    double v = member.infectivity();
    double a = power(bees.cappedDeathPerMite() * m, k, k);
    double clean = power(m, k, k);
    double overt = clean < 1 ? (1 - power(v * m, k, k)) * (a - clean) / (1 - clean) : 0;
    double dead = adults(d, s, cells * (a - overt), cells * overt, year, day, out * v / perBee);

    double mu = dead / perBee / (1 + Math.pow(mites.deathLink() * h, 2));
    double arriving = schedule.immigration[day] * member.immigration() * season.arrivals();
    d.onBees = out + arriving - (h + mu + killOnBees) * s.onBees;
    d.immigrants = arriving;
    d.diedOnBees = mu * s.onBees;
    d.killed = killOnBees * s.onBees + killInCells * (total(s.inWorker) + total(s.inDrone));
    return d;
  }

  /** (1 + x / K)^-n. */
  private static double power(double x, double k, double n) {
    return Math.pow(1 + x / k, -n);
  }

  private double adults(
      State d, State s, double sound, double overt, double year, int day, double matesWithVirus) {
    double cost = schedule.beeCost[day];
    double w = model.climate().winterShare().at(year);
    double leave = bees.springRelease() * model.climate().springRelease().at(year);
    double infection = bees.adultInfections() * matesWithVirus;
    double harm = bees.overtDeath();
    double hiveDeath = bees.hiveDeath();
    double foragerDeath = bees.foragerDeath();
    double winterDeath = model.climate().winterDeath();
    double go = bees.foraging();
    double called = bees.releasedToForage();
    d.hive = sound * (1 - w) - (go + hiveDeath + cost + infection) * s.hive;
    d.hiveOvert = overt - (go + harm * hiveDeath + cost) * s.hiveOvert;
    d.hiveCarrier = infection * (s.hive + s.winter) - (go + hiveDeath + cost) * s.hiveCarrier;
    d.forager =
        go * s.hive + called * leave * s.winter - (foragerDeath + cost + infection) * s.forager;
    d.foragerOvert = go * s.hiveOvert - (harm * foragerDeath + cost) * s.foragerOvert;
    d.foragerCarrier =
        infection * s.forager + go * s.hiveCarrier - (foragerDeath + cost) * s.foragerCarrier;
    d.winter = sound * w - (leave + winterDeath + cost + infection) * s.winter;
    return hiveDeath * (s.hive + harm * s.hiveOvert + s.hiveCarrier)
        + foragerDeath * (s.forager + harm * s.foragerOvert + s.foragerCarrier)
        + (winterDeath + leave * (1 - called)) * s.winter;
  }

  /** Factor of stock and strain: each day's holds at its noon, straight in between. */
  private double stock(double t) {
    double[] daily = schedule.fertility;
    double since = t - 0.5;
    if (since <= 0) {
      return daily[0];
    }
    if (since >= daily.length - 1) {
      return daily[daily.length - 1];
    }
    int before = (int) since;
    double share = since - before;
    return daily[before] * (1 - share) + daily[before + 1] * share;
  }

  /** A stay of some days in equal stages. */
  private void flow(double[] change, double[] at, double into, double days, double drain) {
    for (int i = 0; i < stages; i++) {
      double arrives = i == 0 ? into : at[i - 1] * stages / days;
      change[i] = arrives - at[i] * stages / days - drain * at[i];
    }
  }

  /** What is done in the morning of a day: splits first, then comb cut out. */
  void morning(State s, int day) {
    double bees = schedule.beesLeaving[day];
    double brood = schedule.broodLeaving[day];
    s.movedAway += bees * s.onBees + brood * (total(s.inWorker) + total(s.inDrone));
    s.hive *= 1 - bees;
    s.hiveOvert *= 1 - bees;
    s.hiveCarrier *= 1 - bees;
    s.forager *= 1 - bees;
    s.foragerOvert *= 1 - bees;
    s.foragerCarrier *= 1 - bees;
    s.winter *= 1 - bees;
    s.onBees *= 1 - bees;
    for (int i = 0; i < stages; i++) {
      s.openWorker[i] *= 1 - brood;
      s.openDrone[i] *= 1 - brood;
      s.cappedWorker[i] *= 1 - brood;
      s.cappedDrone[i] *= 1 - brood;
      s.inWorker[i] *= 1 - brood;
      s.inDrone[i] *= 1 - brood;
    }
    double cut = schedule.droneCut[day];
    s.cutOut += cut * total(s.inDrone);
    for (int i = 0; i < stages; i++) {
      s.openDrone[i] *= 1 - cut;
      s.cappedDrone[i] *= 1 - cut;
      s.inDrone[i] *= 1 - cut;
    }
  }

  /** One day in steps of the classical method of Runge and Kutta. */
  State day(State s, int day, int steps, FlowState at) {
    double h = 1.0 / steps;
    double[] y = s.vector(at);
    for (int i = 0; i < steps; i++) {
      double t = day + i * h;
      double[] a = rates(y, t, day, at);
      double[] b = rates(plus(y, h / 2, a), t + h / 2, day, at);
      double[] c = rates(plus(y, h / 2, b), t + h / 2, day, at);
      double[] d = rates(plus(y, h, c), t + h, day, at);
      for (int j = 0; j < y.length; j++) {
        y[j] += h / 6 * (a[j] + 2 * b[j] + 2 * c[j] + d[j]);
      }
    }
    return State.of(y, at);
  }

  private double[] rates(double[] y, double t, int day, FlowState at) {
    return change(State.of(y, at), t, day).vector(at);
  }

  private static double[] plus(double[] y, double h, double[] rate) {
    double[] out = y.clone();
    for (int j = 0; j < out.length; j++) {
      out[j] += h * rate[j];
    }
    return out;
  }
}
