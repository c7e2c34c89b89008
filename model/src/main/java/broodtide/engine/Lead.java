package broodtide.engine;

import broodtide.control.Plan;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * The days before a start, run by colonies of average strength and of the standard year's size. The
 * mites that each begins with are sought, so that it meets its infestation on the start day; then
 * the colony is scaled to its own size. Mites from outside come in during these days, too. Where
 * they alone would bring more than was asked for, the colony begins without mites and fewer come
 * in.
 */
final class Lead {
  /** Share within which a search ends; mites are then scaled to meet the infestation exactly. */
  private static final double NEAR = 1e-7;

  /** Runs after which a search ends anyway, as where no colony lives on with so many mites. */
  private static final int MOST_RUNS = 12;

  /** Most mites per 100 bees that a lead begins with. */
  private static final double HIGHEST = 300;

  private final ColonyModel model;
  private final Schedule schedule;
  private final ColonyBlock before;

  /** Vigours at which it is known what few mites lead to, evenly spread from 0. */
  private static final int VIGOURS = 17;

  private static final double STEP = 3.0 / (VIGOURS - 1);

  /** By vigour: infestation on the start day per infestation on the first, while mites are few. */
  private final double[] growth = new double[VIGOURS];

  /** By vigour: infestation on the start day that mites from outside bring alone. */
  private final double[] brought = new double[VIGOURS];

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
    knowFewMites();
  }

  /** Runs a trace of mites at every vigour, without reinvasion and with them. */
  private void knowFewMites() {
    List<SimulatedColony> members = new ArrayList<>();
    for (int i = 0; i < 2 * VIGOURS; i++) {
      int arriving = i / VIGOURS;
      members.add(new SimulatedColony(1, 1, 0, i % VIGOURS * STEP, arriving, List.of()));
    }
    ColonyBlock b = new ColonyBlock(members.size(), model.mites().clumping());
    for (int l = 0; l < members.size(); l++) {
      b.copyLane(before, 0, l);
    }
    b.begin();
    run(b, new Lanes(members, schedule.start, b.rows, 0));
    for (int i = 0; i < VIGOURS; i++) {
      growth[i] = infestation(b, i) / infestation(before, 0);
      brought[i] = Math.max(0, infestation(b, VIGOURS + i) - infestation(b, i));
    }
  }

  private static double at(double[] values, double vigour) {
    int below = Math.min(VIGOURS - 2, (int) (vigour / STEP));
    double share = vigour / STEP - below;
    return values[below] + share * (values[below + 1] - values[below]);
  }

  /** Fills a block with colonies as they are on the start day. */
  ColonyBlock colonies(List<SimulatedColony> members) {
    Search[] searches = new Search[members.size()];
    for (int l = 0; l < searches.length; l++) {
      searches[l] = search(members.get(l));
    }
    ColonyBlock b = run(members, searches);
    for (int runs = 1; runs < MOST_RUNS && !aimed(b, searches); runs++) {
      b = run(members, searches);
    }
    for (int l = 0; l < searches.length; l++) {
      SimulatedColony m = members.get(l);
      meet(b, l, m.infestation());
      b.scaleLane(l, m.startSize());
    }
    b.begin();
    return b;
  }

  private Search search(SimulatedColony m) {
    return new Search(m, at(growth, m.vigour()), at(brought, m.vigour()));
  }

  private ColonyBlock run(List<SimulatedColony> members, Search[] searches) {
    ColonyBlock b = new ColonyBlock(searches.length, model.mites().clumping());
    Lanes lanes = new Lanes(members, schedule.start, b.rows, 0);
    for (int l = 0; l < searches.length; l++) {
      b.copyLane(before, 0, l);
      double mites = before.adults(0) * searches[l].mites() / 100;
      b.scaleMites(l, mites / b.phoretic[l]);
      lanes.strength[l] = 1;
      lanes.arriving(l, searches[l].immigration());
    }
    b.begin();
    run(b, lanes);
    return b;
  }

  private void run(ColonyBlock b, Lanes lanes) {
    DailyEngine.of(b, model, schedule, lanes).run(DayObserver.NONE);
    b.turn(StandardColony.LEAD);
  }

  /** Takes a run in; returns whether every search has ended. */
  private static boolean aimed(ColonyBlock b, Search[] searches) {
    boolean all = true;
    for (int l = 0; l < searches.length; l++) {
      all &= searches[l].ended(infestation(b, l));
    }
    return all;
  }

  /** Scales mites to the infestation, and puts them on bees alone where none is left to scale. */
  private static void meet(ColonyBlock b, int lane, double infestation) {
    double wanted = infestation * Math.max(1, b.adults(lane)) / 100;
    if (b.phoretic[lane] > 0) {
      b.scaleMites(lane, wanted / b.phoretic[lane]);
    } else {
      b.phoretic[lane] = wanted;
    }
  }

  private static double infestation(ColonyBlock b, int lane) {
    return Quantity.INFESTATION.of(b, lane);
  }

  /**
   * One colony's search, by secants that never leave the bracket: what it begins with rises with
   * what it leads to.
   */
  private static final class Search {
    private final double wanted;
    private final double usual;
    private final double base;

    /** Whether the colony begins without mites and those from outside are sought. */
    private boolean outside;

    private double low;
    private double high = HIGHEST;
    private double x;
    private double lastX = Double.NaN;
    private double lastY = Double.NaN;
    private boolean ended;

    Search(SimulatedColony m, double growth, double brought) {
      wanted = m.infestation();
      usual = m.immigration() / m.startSize();
      base = Math.min(brought * usual, 0.9 * wanted);
      x = Math.min(HIGHEST, (wanted - base) / growth);
      ended = wanted == 0;
    }

    /** Mites per 100 bees on the first day. */
    double mites() {
      return outside || wanted == 0 ? 0 : x;
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
      if (capped || Math.abs(y - wanted) <= NEAR * wanted) {
        ended = true;
      } else if (!outside && x == 0) {
        outside = true;
        low = 0;
        high = usual;
        lastX = Double.NaN;
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
      double under = outside ? 0 : Math.min(base, 0.9 * y);
      double slope = Double.isNaN(lastX) ? (y - under) / x : (y - lastY) / (x - lastX);
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
