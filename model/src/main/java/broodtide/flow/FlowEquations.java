package broodtide.flow;

import static broodtide.engine.AdultClass.FORAGER_CARRIER;
import static broodtide.engine.AdultClass.FORAGER_OVERT;
import static broodtide.engine.AdultClass.FORAGER_SOUND;
import static broodtide.engine.AdultClass.HIVE_CARRIER;
import static broodtide.engine.AdultClass.HIVE_OVERT;
import static broodtide.engine.AdultClass.HIVE_SOUND;
import static broodtide.engine.AdultClass.WINTER;
import static broodtide.flow.FlowState.DAUGHTERS;
import static broodtide.flow.FlowState.DIED_IN_CELLS;
import static broodtide.flow.FlowState.DIED_ON_BEES;
import static broodtide.flow.FlowState.IMMIGRANTS;
import static broodtide.flow.FlowState.KILLED;
import static broodtide.flow.FlowState.PHORETIC;

import broodtide.colony.BeeRates;
import broodtide.engine.AdultClass;
import broodtide.engine.ColonyModel;
import broodtide.engine.Schedule;
import broodtide.engine.SeasonChange;
import broodtide.engine.SimulatedColony;
import broodtide.mite.CellLoad;
import broodtide.mite.MiteRates;
import broodtide.season.Climate;
import java.util.Arrays;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;

/**
 * The rates of change of a colony and its mites in continuous time: the same rates as the daily
 * engine, every brood delay a chain of equal stages. Between two breaks of the plan everything here
 * is continuous in time.
 */
public final class FlowEquations implements FirstOrderDifferentialEquations {
  private static final double FEW = 1e-12;

  private final FlowState layout;
  private final Schedule schedule;
  private final Climate climate;
  private final BeeRates bees;
  private final MiteRates mites;
  private final SimulatedColony member;
  private final double[] clean;

  private int segment;
  private double onBees;
  private double inCells;
  private double vigour;
  private double immigration;

  /**
   * The equations of one colony. Call {@link #enter} before the first use.
   *
   * @param layout where each variable lies in the state vector
   * @param schedule the scenario written out day by day
   * @param model the rates
   * @param member what sets the colony apart
   */
  public FlowEquations(
      FlowState layout, Schedule schedule, ColonyModel model, SimulatedColony member) {
    this.layout = layout;
    this.schedule = schedule;
    this.member = member;
    climate = model.climate();
    bees = model.bees();
    mites = model.mites();
    clean = new double[layout.vector().length];
  }

  /**
   * Takes the plan's settings of a day until the next call.
   *
   * @param day index of the day in the schedule, from 0
   */
  public void enter(int day) {
    segment = day;
    SeasonChange change = member.changeOn(schedule.start.plusDays(day));
    vigour = member.vigour() * change.growth();
    immigration = member.immigration() * change.arrivals();
    onBees = 0;
    inCells = 0;
    for (int c = 0; c < schedule.courses.size(); c++) {
      Schedule.Course course = schedule.courses.get(c);
      double action = course.action()[day];
      if (action > 0) {
        double success = c < member.success().size() ? member.success().get(c) : 1;
        onBees += success * (action * course.onBees());
        inCells += success * (action * course.inCells());
      }
    }
  }

  /** Times at which a curve of the climate bends, in days since the start, rising. */
  double[] bends() {
    return Stream.of(
            climate.laying(), climate.droneShare(), climate.winterShare(), climate.springRelease())
        .flatMapToDouble(curve -> Arrays.stream(curve.bends()).flatMap(this::everyYear))
        .filter(t -> t > 0 && t < schedule.days)
        .sorted()
        .distinct()
        .toArray();
  }

  private DoubleStream everyYear(double share) {
    int years = (int) (schedule.days / schedule.yearLength) + 2;
    return IntStream.range(0, years)
        .mapToDouble(i -> (i + share - schedule.yearShare) * schedule.yearLength + 0.5);
  }

  @Override
  public int getDimension() {
    return clean.length;
  }

  @Override
  public void computeDerivatives(double t, double[] state, double[] rate) {
    for (int i = 0; i < clean.length; i++) {
      clean[i] = Math.max(0, state[i]);
    }
    Arrays.fill(rate, 0);
    double[] y = clean;
    double year = yearShare(t);
    double adults = 0;
    for (AdultClass each : AdultClass.ALL) {
      adults += y[each.ordinal()];
    }
    int last = layout.stages - 1;

    double droneShare = Math.max(climate.droneShare().at(year), schedule.droneFloor[segment]);
    double potential = schedule.noLaying[segment] ? 0 : climate.laying().at(year);
    double eggs =
        member.strength()
            * potential
            * adults
            / (adults + bees.halfLayingAdults() + Double.MIN_NORMAL);
    double kept = 1 - schedule.broodCost[segment];
    double ow = layout.openWorkerRate();
    double od = layout.openDroneRate();
    double cappedWorker = kept * ow * y[layout.openWorker + last];
    double cappedDrone = kept * od * y[layout.openDrone + last];
    chain(rate, y, layout.openWorker, eggs * (1 - droneShare) * bees.workerSurvival(), ow, 0);
    chain(rate, y, layout.openDrone, eggs * droneShare * bees.droneSurvival(), od, 0);

    double perBee = bees.beesPerGram() / Math.max(1, adults);
    double toWorker = mites.workerInvasion() * cappedWorker * perBee;
    double toDrone = mites.droneInvasion() * cappedDrone * perBee;
    double enter = mites.invasion(cappedWorker * perBee, cappedDrone * perBee);
    double workerPart = toWorker / (toWorker + toDrone + Double.MIN_NORMAL);
    double entering = enter * y[PHORETIC];
    double cw = layout.cappedWorkerRate();
    double cd = layout.cappedDroneRate();
    double workerOut = cw * y[layout.cappedWorker + last];
    double workerMothersOut = cw * y[layout.workerMothers + last];
    double droneMothersOut = cd * y[layout.droneMothers + last];
    double workerLoad = y[layout.workerMothers + last] / (y[layout.cappedWorker + last] + FEW);
    double droneLoad = y[layout.droneMothers + last] / (y[layout.cappedDrone + last] + FEW);
    chain(rate, y, layout.cappedWorker, cappedWorker, cw, 0);
    chain(rate, y, layout.cappedDrone, cappedDrone, cd, 0);
    chain(rate, y, layout.workerMothers, entering * workerPart, cw, inCells);
    chain(rate, y, layout.droneMothers, toDrone > 0 ? entering * (1 - workerPart) : 0, cd, inCells);

    double fertility = fertility(t) * vigour;
    double k = mites.clumping();
    double workerYoung =
        workerMothersOut
            * fertility
            * mites.workerDaughters()
            * clumped(mites.workerCrowding() * workerLoad, k + 1);
    double droneYoung =
        droneMothersOut
            * fertility
            * mites.droneDaughters()
            * clumped(mites.droneCrowding() * droneLoad, k + 1);
    double back =
        workerMothersOut * mites.workerMothersBack()
            + droneMothersOut * mites.droneMothersBack()
            + workerYoung * (1 - mites.workerDaughtersLost())
            + droneYoung * (1 - mites.droneDaughtersLost());
    rate[DAUGHTERS] = workerYoung + droneYoung;
    rate[DIED_IN_CELLS] = workerMothersOut + droneMothersOut + workerYoung + droneYoung - back;

    double v = member.infectivity();
    double alive = clumped(bees.cappedDeathPerMite() * workerLoad, k);
    double overt = overt(workerLoad, alive, k);
    double infection = bees.adultInfections() * v * back / Math.max(1, adults);
    double dead =
        age(rate, y, workerOut * (alive - overt), workerOut * overt, infection, yearShare(t));

    double death = mites.death(dead / Math.max(1, adults), enter);
    double arriving = schedule.immigration[segment] * immigration;
    rate[PHORETIC] = back + arriving - entering - (death + onBees) * y[PHORETIC];
    rate[IMMIGRANTS] = arriving;
    rate[DIED_ON_BEES] = death * y[PHORETIC];
    rate[KILLED] =
        onBees * y[PHORETIC]
            + inCells * (sum(y, layout.workerMothers) + sum(y, layout.droneMothers));
  }

  /** Share of cells from which an overtly infected bee comes; see {@link CellLoad#overt}. */
  private double overt(double load, double alive, double k) {
    double clean = clumped(load, k);
    double infected = 1 - clumped(member.infectivity() * load, k);
    return clean < 1 ? infected * Math.max(0, alive - clean) / (1 - clean) : 0;
  }

  /** (1 + x / K)^-n for n = K or K + 1; products where K is the usual 2. See {@link CellLoad}. */
  private double clumped(double x, double n) {
    double k = mites.clumping();
    double share = 1 / (1 + x / k);
    if (k != 2) {
      return Math.pow(share, n);
    }
    return n == k ? share * share : share * share * share;
  }

  /**
   * Rates of change of the adults.
   *
   * @param sound bees that emerge without showing infection, a day
   * @param overt bees that emerge overtly infected, a day
   * @param infection rate at which sound adults are infected, 1/day
   * @return adults that die of age, a day
   */
  private double age(
      double[] rate, double[] y, double sound, double overt, double infection, double year) {
    double winterShare = climate.winterShare().at(year);
    double release = climate.springRelease().at(year) * bees.springRelease();
    double cost = schedule.beeCost[segment];
    double winter = y[WINTER.ordinal()];
    double released = release * winter;
    double toForage = bees.releasedToForage() * released;
    double died = climate.winterDeath() * winter + released - toForage;
    rate[WINTER.ordinal()] =
        sound * winterShare - released - (climate.winterDeath() + infection + cost) * winter;
    double hiveInfected = infection * y[HIVE_SOUND.ordinal()];
    double foragersInfected = infection * y[FORAGER_SOUND.ordinal()];
    died +=
        summer(
            rate,
            y,
            HIVE_SOUND,
            FORAGER_SOUND,
            sound * (1 - winterShare) - hiveInfected,
            toForage - foragersInfected,
            1);
    died += summer(rate, y, HIVE_OVERT, FORAGER_OVERT, overt, 0, bees.overtDeath());
    died +=
        summer(
            rate,
            y,
            HIVE_CARRIER,
            FORAGER_CARRIER,
            hiveInfected + infection * winter,
            foragersInfected,
            1);
    return died;
  }

  /** Hive bees and foragers of one infection with what joins them; returns those that die. */
  private double summer(
      double[] rate,
      double[] y,
      AdultClass hive,
      AdultClass forager,
      double toHive,
      double toForagers,
      double harm) {
    double cost = schedule.beeCost[segment];
    double inHive = y[hive.ordinal()];
    double flying = y[forager.ordinal()];
    double first = bees.foraging() * inHive;
    double hiveDeath = harm * bees.hiveDeath() * inHive;
    double foragerDeath = harm * bees.foragerDeath() * flying;
    rate[hive.ordinal()] = toHive - first - hiveDeath - cost * inHive;
    rate[forager.ordinal()] = first + toForagers - foragerDeath - cost * flying;
    return hiveDeath + foragerDeath;
  }

  /** Inflow through equal stages, each passed at one rate and drained at another. */
  private void chain(
      double[] rate, double[] y, int first, double inflow, double passage, double drain) {
    double in = inflow;
    for (int k = first; k < first + layout.stages; k++) {
      double out = passage * y[k];
      rate[k] = in - out - drain * y[k];
      in = out;
    }
  }

  private double sum(double[] y, int first) {
    double sum = 0;
    for (int k = first; k < first + layout.stages; k++) {
      sum += y[k];
    }
    return sum;
  }

  /** A day's values of the curves hold at its noon. */
  private double yearShare(double t) {
    return schedule.yearShare + (t - 0.5) / schedule.yearLength;
  }

  private double fertility(double t) {
    double noon = Math.max(0, Math.min(schedule.days - 1.0, t - 0.5));
    int day = Math.min((int) noon, Math.max(0, schedule.days - 2));
    double next = schedule.fertility[Math.min(day + 1, schedule.days - 1)];
    return schedule.fertility[day] + (next - schedule.fertility[day]) * (noon - day);
  }
}
