package broodtide.engine;

import broodtide.control.Plan;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;

/**
 * The days before a start, run by colonies of average strength and of the standard year's size. The
 * mites that each begins with are sought, so that it meets its infestation on the start day; then
 * the colony is scaled to its own size. Mites from outside come in during these days, too. Where
 * they alone would bring more than was asked for, the colony begins without mites and fewer come
 * in.
 */
final class Lead {
  /** Share within which a search ends; what is left is put right along the last two runs. */
  private static final double NEAR = 1e-5;

  /** The same after a first run, or where the run before is of no use. */
  private static final double MET = 1e-7;

  /** The same where a start need only be about right. */
  private static final double ABOUT = 3e-3;

  /** Runs after which a search ends anyway, as where no colony lives on with so many mites. */
  private static final int MOST_RUNS = 12;

  /** Most mites per 100 bees that a lead begins with. */
  private static final double HIGHEST = 300;

  private final ColonyModel model;
  private final Schedule schedule;
  private final ColonyBlock before;
  private final LeadOutcomes outcomes;
  private final double met;

  /**
   * A lead.
   *
   * @param model the rates
   * @param first its first day
   * @param before the standard year's colony on that day
   */
  Lead(ColonyModel model, LocalDate first, ColonyBlock before) {
    this.model = model;
    this.before = before;
    schedule =
        Schedule.of(new Scenario(model, Plan.waiting("standard"), first, StandardColony.LEAD));
    outcomes = new LeadOutcomes(HIGHEST, this::infestations);
    met = MET;
  }

  private Lead(Lead exact, double met) {
    model = exact.model;
    schedule = exact.schedule;
    before = exact.before;
    outcomes = exact.outcomes;
    this.met = met;
  }

  /** A lead whose searches end when the first day is about right, most after one run. */
  Lead about() {
    return new Lead(this, ABOUT);
  }

  /** Infestations on the start day of colonies whose infestation is that of the first. */
  private double[] infestations(List<SimulatedColony> members) {
    ColonyBlock b = begin(members.stream().mapToDouble(SimulatedColony::infestation).toArray());
    run(b, new Lanes(members, schedule.start, b.rows, 0));
    double[] out = new double[members.size()];
    Arrays.setAll(out, l -> infestation(b, l));
    return out;
  }

  /** Fills a block with colonies as they are on the start day. */
  ColonyBlock colonies(List<SimulatedColony> members) {
    Search[] searches = new Search[members.size()];
    for (int l = 0; l < searches.length; l++) {
      searches[l] = new Search(members.get(l), outcomes, met);
    }
    ColonyBlock found = new ColonyBlock(searches.length, model.mites().clumping());
    ColonyBlock last = run(members, searches);
    boolean ended = take(found, last, last, searches, false);
    for (int runs = 1; runs < MOST_RUNS && !ended; runs++) {
      ColonyBlock next = run(members, searches);
      ended = take(found, next, last, searches, runs == MOST_RUNS - 1);
      last = next;
    }
    meet(found, members);
    found.scale(members.stream().mapToDouble(SimulatedColony::startSize).toArray());
    found.begin();
    return found;
  }

  private ColonyBlock run(List<SimulatedColony> members, Search[] searches) {
    ColonyBlock b = begin(Arrays.stream(searches).mapToDouble(Search::mites).toArray());
    Lanes lanes = new Lanes(members, schedule.start, b.rows, 0);
    for (int l = 0; l < searches.length; l++) {
      lanes.strength[l] = 1;
      lanes.arriving(l, searches[l].immigration());
    }
    run(b, lanes);
    return b;
  }

  /** The standard year's colony in every lane, with so many mites per 100 bees. */
  private ColonyBlock begin(double[] infestations) {
    ColonyBlock b = new ColonyBlock(infestations.length, model.mites().clumping());
    b.repeat(before);
    double perMite = before.adults(0) / 100 / before.phoretic[0];
    b.scaleMites(Arrays.stream(infestations).map(i -> i * perMite).toArray());
    b.begin();
    return b;
  }

  private void run(ColonyBlock b, Lanes lanes) {
    DailyEngine.of(b, model, schedule, lanes).run(DayObserver.NONE);
    b.turn(StandardColony.LEAD);
  }

  /**
   * Takes a run in, with the colonies whose search it ends; returns whether all have ended.
   *
   * @param last the run before; the same where it is the first
   * @param all whether it ends all searches
   */
  private static boolean take(
      ColonyBlock found, ColonyBlock run, ColonyBlock last, Search[] searches, boolean all) {
    double[] beyond = new double[searches.length];
    boolean ended = true;
    for (int l = 0; l < searches.length; l++) {
      Search search = searches[l];
      boolean ends = search.ended(infestation(run, l)) || all;
      beyond[l] = ends && !search.taken ? search.beyond : Double.NaN;
      search.taken = ends;
      ended &= ends;
    }
    found.follow(last, run, beyond);
    return ended;
  }

  /** Scales mites to the infestation, and puts them on bees alone where none is left to scale. */
  private static void meet(ColonyBlock b, List<SimulatedColony> members) {
    double[] factors = new double[members.size()];
    for (int l = 0; l < factors.length; l++) {
      double wanted = members.get(l).infestation() * Math.max(1, b.adults(l)) / 100;
      if (b.phoretic[l] > 0) {
        factors[l] = wanted / b.phoretic[l];
      } else {
        factors[l] = 1;
        b.phoretic[l] = wanted;
      }
    }
    b.scaleMites(factors);
  }

  private static double infestation(ColonyBlock b, int lane) {
    return Quantity.INFESTATION.of(b, lane);
  }

  /**
   * One colony's search, by secants that never leave the bracket: what it begins with rises with
   * what it leads to.
   */
  private static final class Search {
    /** Share by which an infestation is changed to see how fast the first day's changes. */
    private static final double NUDGE = 1e-3;

    /** What is left must be a small part of the way between the last two runs. */
    private static final double CLOSE = 0.1;

    private final double met;
    private final double wanted;
    private final double usual;

    /** Whether the colony begins without mites and those from outside are sought. */
    private boolean outside;

    private double low;
    private double high = HIGHEST;
    private double x;

    /** By how much the start day's infestation rises with what the colony begins with. */
    private double slope;

    /** How far beyond its last run, in parts of the way from the one before, a search ends. */
    private double beyond;

    private double lastX = Double.NaN;
    private double lastY = Double.NaN;
    private boolean ended;

    /** Whether its colony has been taken from the run that ended it. */
    private boolean taken;

    Search(SimulatedColony m, LeadOutcomes outcomes, double met) {
      this.met = met;
      wanted = m.infestation();
      usual = m.immigration() / m.startSize();
      ended = wanted == 0;
      if (ended) {
        return;
      }
      double all = outcomes.firstDay(wanted, m.vigour(), m.infectivity());
      double arrivals = Math.min(outcomes.arrivals(m.vigour()) * usual, 0.9 * all);
      x = Math.min(HIGHEST, all - arrivals);
      double more = outcomes.firstDay(wanted * (1 + NUDGE), m.vigour(), m.infectivity());
      slope = more > all ? wanted * NUDGE / (more - all) : wanted / all;
    }

    /** Mites per 100 bees on the first day. */
    double mites() {
      return outside ? 0 : x;
    }

    /** Factor on the mites that come from outside. */
    double immigration() {
      return wanted == 0 ? 0 : outside ? x : usual;
    }

    /** Takes in what the last run led to; returns whether it was near enough. */
    boolean ended(double y) {
      if (ended) {
        return true;
      }
      boolean capped = !outside && x == HIGHEST && y < wanted;
      double rest = (wanted - y) / (y - lastY);
      if (capped || Math.abs(y - wanted) <= met * wanted) {
        ended = true;
      } else if (Math.abs(y - wanted) <= NEAR * wanted && Math.abs(rest) < CLOSE) {
        ended = true;
        beyond = rest;
      } else if (!outside && x == 0 && y > wanted) {
        outside = true;
        low = 0;
        high = usual;
        lastX = Double.NaN;
        lastY = Double.NaN;
        x = usual * wanted / y;
      } else {
        step(y);
      }
      return ended;
    }

    private void step(double y) {
      if (y < wanted) {
        low = x;
      } else {
        high = x;
      }
      if (!Double.isNaN(lastX)) {
        slope = (y - lastY) / (x - lastX);
      } else if (outside) {
        slope = y / x;
      }
      double next = x + (wanted - y) / slope;
      lastX = x;
      lastY = y;
      if (!outside && low == 0 && !(next > 0)) {
        x = 0;
      } else if (next > low && next < high) {
        x = next;
      } else {
        x = next >= high && high == HIGHEST ? HIGHEST : (low + high) / 2;
      }
    }
  }
}
