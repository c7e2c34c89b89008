package broodtide.engine;

import broodtide.colony.BeeRates;
import broodtide.mite.MiteRates;
import java.util.ArrayDeque;
import java.util.Deque;

/**
 * One colony, one day at a time, written from sections 1 to 5 of SCIENCE.md and from nothing else:
 * no lanes, no rings, powers and exponentials of the library. It shares no line with the daily
 * engine, so that the two agree only where both do what the page says.
 */
final class PlainColony {
  final BeeRates bees;
  final MiteRates rates;
  final double winterDeath;
  final double infectivity;
  final Brood worker = new Brood();
  final Brood drone = new Brood();
  final Adults sound = new Adults();
  final Adults overt = new Adults();
  final Adults carrier = new Adults();

  /** M, mites on adult bees. */
  double onBees;

  /** The ledger, without its first and last column. */
  double daughters;

  double immigrants;
  double diedOnBees;
  double diedInCells;
  double killed;
  double cutOut;
  double movedAway;

  PlainColony(ColonyModel model, double infectivity) {
    bees = model.bees();
    rates = model.mites();
    winterDeath = model.climate().winterDeath();
    this.infectivity = infectivity;
  }

  /** Worker or drone brood, oldest first: one entry per day. */
  static final class Brood {
    Deque<Double> open = new ArrayDeque<>();
    Deque<Double> capped = new ArrayDeque<>();
    Deque<Double> mothers = new ArrayDeque<>();

    double inside() {
      return total(mothers);
    }

    void add(Brood other) {
      open.addAll(other.open);
      capped.addAll(other.capped);
      mothers.addAll(other.mothers);
    }

    void keep(double share) {
      open = times(open, share);
      capped = times(capped, share);
      mothers = times(mothers, share);
    }

    /** Cells that hold a mite, cohort by cohort. */
    double infested(double k) {
      double sum = 0;
      Deque<Double> in = new ArrayDeque<>(mothers);
      for (double cells : capped) {
        double m = in.removeFirst() / cells;
        sum += cells > 0 ? cells * (1 - Math.pow(1 + m / k, -k)) : 0;
      }
      return sum;
    }
  }

  /** Adults that came by virus in one way. */
  static final class Adults {
    double hive;
    double foragers;
    double winter;

    void add(Adults other) {
      hive += other.hive;
      foragers += other.foragers;
      winter += other.winter;
    }

    double all() {
      return hive + foragers + winter;
    }

    void keep(double share) {
      hive *= share;
      foragers *= share;
      winter *= share;
    }
  }

  /**
   * What the calendar, the plan and the colony's luck set for a day.
   *
   * @param eggs laying potential times strength, nothing while the queen does not lay
   * @param droneShare share of the eggs in drone cells
   * @param winterShare share of emerging workers that become winter bees
   * @param release rate at which winter bees leave winter life, 1/day
   * @param arriving mites from outside
   * @param fertility factor on daughters from stock and strain
   * @param killOnBees hazard, 1/day
   * @param killInCells hazard, 1/day
   * @param beeCost extra death of bees, 1/day
   * @param broodKept share of the brood due for capping that is not lost
   * @param beesStaying share of adults that a split leaves
   * @param broodStaying share of brood that a split leaves
   * @param droneBroodKept share of drone brood that cuts leave
   */
  record Day(
      double eggs,
      double droneShare,
      double winterShare,
      double release,
      double arriving,
      double fertility,
      double killOnBees,
      double killInCells,
      double beeCost,
      double broodKept,
      double beesStaying,
      double broodStaying,
      double droneBroodKept) {}

  double adults() {
    return sound.all() + overt.all() + carrier.all();
  }

  double per100() {
    return 100 * onBees / adults();
  }

  /** A colony of another size with mites alike. */
  void scale(double size) {
    sound.keep(size);
    overt.keep(size);
    carrier.keep(size);
    worker.keep(size);
    drone.keep(size);
    onBees *= size;
  }

  double mites() {
    return onBees + worker.inside() + drone.inside();
  }

  void run(Day d) {
    split(d);
    cutOut += drone.inside() * (1 - d.droneBroodKept());
    drone.keep(d.droneBroodKept());
    double before = worker.inside() + drone.inside();
    double surviving = Math.exp(-d.killInCells());
    worker.mothers = times(worker.mothers, surviving);
    drone.mothers = times(drone.mothers, surviving);
    killed += before - worker.inside() - drone.inside();

    double n = adults();
    double perBee = Math.max(1, n);
    double cappedWorkers = worker.open.removeFirst() * d.broodKept();
    double cappedDrones = drone.open.removeFirst() * d.broodKept();
    double eggs = n == 0 ? 0 : d.eggs() * n / (n + bees.halfLayingAdults());
    worker.open.addLast(eggs * (1 - d.droneShare()) * bees.workerSurvival());
    drone.open.addLast(eggs * d.droneShare() * bees.droneSurvival());

    double emerging = open(d);
    infect(bees.adultInfections() * infectivity * emerging / perBee);
    sound.hive += newSound * (1 - d.winterShare());
    sound.winter += newSound * d.winterShare();
    overt.hive += newOvert;
    double dead = age(sound, 1, d) + age(overt, bees.overtDeath(), d) + age(carrier, 1, d);
    enter(d, emerging, cappedWorkers, cappedDrones, perBee, dead);
  }

  private double newSound;
  private double newOvert;

  /** Sound bees are infected at a rate; winter bees among them become hive bees. */
  private void infect(double rate) {
    double infected = 1 - Math.exp(-rate);
    carrier.hive += (sound.hive + sound.winter) * infected;
    carrier.foragers += sound.foragers * infected;
    sound.keep(1 - infected);
  }

  private void split(Day d) {
    movedAway += onBees * (1 - d.beesStaying());
    movedAway += (worker.inside() + drone.inside()) * (1 - d.broodStaying());
    onBees *= d.beesStaying();
    sound.keep(d.beesStaying());
    overt.keep(d.beesStaying());
    carrier.keep(d.beesStaying());
    worker.keep(d.broodStaying());
    drone.keep(d.broodStaying());
  }

  /** The oldest cells open; returns the mites that come out of them. */
  private double open(Day d) {
    double k = rates.clumping();
    double cells = worker.capped.removeFirst();
    double inWorker = worker.mothers.removeFirst();
    double m = cells > 0 ? inWorker / cells : 0;
    double clean = Math.pow(1 + m / k, -k);
    double alive = Math.pow(1 + bees.cappedDeathPerMite() * m / k, -k);
    double withVirus = 1 - Math.pow(1 + infectivity * m / k, -k);
    newOvert = clean < 1 ? cells * withVirus * (alive - clean) / (1 - clean) : 0;
    newSound = cells * alive - newOvert;
    double droneCells = drone.capped.removeFirst();
    double inDrone = drone.mothers.removeFirst();
    double md = droneCells > 0 ? inDrone / droneCells : 0;
    double fromWorker =
        inWorker
            * d.fertility()
            * rates.workerDaughters()
            * Math.pow(1 + rates.workerCrowding() * m / k, -(k + 1));
    double fromDrone =
        inDrone
            * d.fertility()
            * rates.droneDaughters()
            * Math.pow(1 + rates.droneCrowding() * md / k, -(k + 1));
    double out =
        inWorker * rates.workerMothersBack()
            + inDrone * rates.droneMothersBack()
            + fromWorker * (1 - rates.workerDaughtersLost())
            + fromDrone * (1 - rates.droneDaughtersLost());
    daughters += fromWorker + fromDrone;
    diedInCells += inWorker + inDrone + fromWorker + fromDrone - out;
    return out;
  }

  private void enter(Day d, double emerging, double cw, double cd, double perBee, double dead) {
    double drawWorker = bees.beesPerGram() * rates.workerInvasion() * cw / perBee;
    double drawDrone = bees.beesPerGram() * rates.droneInvasion() * cd / perBee;
    double x = drawWorker + drawDrone;
    double h = x / (1 + rates.shortestStay() * x);
    double mu = dead / perBee / (1 + Math.pow(rates.deathLink() * h, 2));
    double all = h + mu + d.killOnBees();
    double exposed = onBees + emerging / 2;
    double leaving = -exposed * Math.expm1(-all);
    diedOnBees += all > 0 ? leaving * mu / all : 0;
    killed += all > 0 ? leaving * d.killOnBees() / all : 0;
    double entering = all > 0 ? leaving * h / all : 0;
    worker.capped.addLast(cw);
    drone.capped.addLast(cd);
    worker.mothers.addLast(x > 0 ? entering * drawWorker / x : 0);
    drone.mothers.addLast(x > 0 ? entering * drawDrone / x : 0);
    onBees = exposed - leaving + emerging / 2 + d.arriving();
    immigrants += d.arriving();
  }

  /** A group x with rates adding to r becomes x / (1 + r); returns those that die of age. */
  private double age(Adults a, double harm, Day d) {
    double hiveDeath = harm * bees.hiveDeath();
    double foragerDeath = harm * bees.foragerDeath();
    a.hive /= 1 + hiveDeath + d.beeCost() + bees.foraging();
    a.winter /= 1 + winterDeath + d.beeCost() + d.release();
    double called = d.release() * bees.releasedToForage() * a.winter;
    a.foragers =
        (a.foragers + bees.foraging() * a.hive + called) / (1 + foragerDeath + d.beeCost());
    return a.hive * hiveDeath
        + a.foragers * foragerDeath
        + a.winter * (winterDeath + d.release() * (1 - bees.releasedToForage()));
  }

  static double total(Deque<Double> cohorts) {
    return cohorts.stream().mapToDouble(Double::doubleValue).sum();
  }

  static Deque<Double> times(Deque<Double> cohorts, double share) {
    Deque<Double> out = new ArrayDeque<>();
    cohorts.forEach(x -> out.addLast(x * share));
    return out;
  }
}
