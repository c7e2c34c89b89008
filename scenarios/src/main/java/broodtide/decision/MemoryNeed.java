package broodtide.decision;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.PlanRun;
import broodtide.fit.PriorSensitivity;
import broodtide.fit.SeasonBanks;
import java.time.temporal.ChronoUnit;

/**
 * Memory that a run holds at its fullest moment, reckoned before it begins. Most of it are the days
 * of simulated colonies: one float for each quantity that is kept, so it grows straight with
 * colonies, days and plans. The bank of seasons from which they are drawn comes on top.
 *
 * @param fixed bytes whatever the number of simulated colonies
 * @param perColony bytes for each simulated colony, without those of the bank
 * @param plans plans side by side, of whose days as many are held as {@link Comparison#kept} says
 * @param perDays bytes of a simulated colony's days in one of these plans
 */
public record MemoryNeed(long fixed, long perColony, int plans, long perDays) {
  /** The program itself, its library and one picture; measured, rounded up. */
  private static final long PROGRAM = 20L << 20;

  /** What is kept of a hive until the end: its part of the page, pictures, tables; measured. */
  private static final long HIVE = 1L << 20;

  /** What is kept besides of a hive whose plans are drawn, its share of the report; measured. */
  private static final long DRAWN = 3L << 20;

  /**
   * A simulated colony of the posterior with its state on the first day and the copies that its
   * sampler makes; by its fields.
   */
  private static final long UNKNOWNS = 1400;

  /** The same for each miticide course, whose success is one unknown more. */
  private static final long COURSE = 120;

  /** What is worked out of a colony in a plan once it has been played: days, peaks, losses. */
  private static final long OUTCOMES = 64;

  /**
   * What is left of a colony in a plan whose days are not held: figures of some days; by fields.
   */
  private static final int SUMMED_UP = 20 * Double.BYTES;

  /** Bytes of a number in a list of colonies. */
  private static final long LISTED = 24;

  /** Bytes of one quantity of one colony on one day. */
  private static final long CELL = Float.BYTES;

  /** More simulated colonies than any run has. */
  private static final int MOST_COLONIES = 1 << 24;

  private static final int WEEK = 7;

  /** Most usual plans, which every decision tool lays side by side first. */
  private static final int USUAL_PLANS = 7;

  /**
   * {@return what a run of one colony needs at least: its posterior}
   *
   * @param c the colony
   * @param hives colonies of the whole run
   */
  private static MemoryNeed posterior(ColonyCase c, int hives) {
    long courses = c.given().stream().filter(g -> g.course().isPresent()).count();
    return new MemoryNeed(PROGRAM + hives * HIVE, UNKNOWNS + COURSE * (courses + 1), 0, 0);
  }

  /** The posterior and the usual plans side by side. */
  private static MemoryNeed decided(ColonyCase c, int hives) {
    return posterior(c, hives).with(USUAL_PLANS, season(c, PlanRun.MOST_KEPT));
  }

  private MemoryNeed and(long fixedMore, long perColonyMore) {
    return new MemoryNeed(fixed + fixedMore, perColony + perColonyMore, plans, perDays);
  }

  private MemoryNeed with(int more, long days) {
    return new MemoryNeed(fixed, perColony + more * (long) SUMMED_UP, more, days);
  }

  /** Every day of one plan, with each colony's chance of being alive. */
  private static long season(ColonyCase c, int quantities) {
    return CELL * (quantities + 1) * (ChronoUnit.DAYS.between(c.start(), c.until()) + 2) + OUTCOMES;
  }

  /** Waiting alone, looked at to the spring, as every decision is that lays no plans. */
  private static long waiting(ColonyCase c) {
    return season(c.throughWinter(), PlanRun.MOST_KEPT);
  }

  /**
   * {@return what plans side by side need: every day of every plan is held until all are drawn}
   *
   * @param c the colony
   * @param hives colonies of the whole run
   * @param plans plans side by side
   */
  public static MemoryNeed ofPlans(ColonyCase c, int hives, int plans) {
    long days = ChronoUnit.DAYS.between(c.now(), c.until());
    long map = plans > 1 ? windowMap(c, WindowSearch.USUAL.split(",").length, days / WEEK + 1) : 0;
    long matters = PriorSensitivity.DRAWS * season(c, 1);
    MemoryNeed need = posterior(c, hives).and(hives * DRAWN + Math.max(map, matters), 0);
    return plans > 1 ? need.with(plans, season(c, PlanRun.MOST_KEPT)) : need.and(0, waiting(c));
  }

  /**
   * {@return what a search for start days needs: one season at a time, and the outcome of every
   * cell}
   *
   * @param c the colony
   * @param hives colonies of the whole run
   * @param controls rows
   * @param starts start days
   */
  public static MemoryNeed ofWindows(ColonyCase c, int hives, int controls, int starts) {
    return decided(c, hives).and(windowMap(c, controls, starts), 0);
  }

  private static long windowMap(ColonyCase c, int controls, long starts) {
    return WindowSearch.ENOUGH
        * (controls * starts * Double.BYTES + 2 * season(c, PlanRun.MOST_KEPT));
  }

  /**
   * {@return what rules need: a season, the one before it, and the luck of every wash}
   *
   * @param c the colony
   * @param hives colonies of the whole run
   * @param rules rules to play
   * @param washes wash days
   */
  public static MemoryNeed ofRules(ColonyCase c, int hives, int rules, int washes) {
    int results = 7;
    return decided(c, hives)
        .and(
            0,
            2 * season(c, PlanRun.MOST_KEPT)
                + 2L * Double.BYTES * washes
                + (long) results * Double.BYTES * rules
                + 2 * LISTED);
  }

  /**
   * {@return what the worth of a wash needs: a season, the one before it, and the chance of every
   * count}
   *
   * @param c the colony
   * @param hives colonies of the whole run
   * @param plans plans that are weighed, those of today and of the wash day together
   * @param bees bees in the wash
   */
  public static MemoryNeed ofWashWorth(ColonyCase c, int hives, int plans, int bees) {
    return decided(c, hives)
        .and(0, 2 * season(c, PlanRun.MOST_KEPT) + (long) Double.BYTES * (plans + bees + 1));
  }

  /**
   * {@return what it needs to judge a treatment: two seasons of two quantities, two of one, and one
   * of one quantity that runs on for as long as a further wash would count}
   *
   * @param c the colony
   * @param hives colonies of the whole run
   */
  public static MemoryNeed ofTreatmentCheck(ColonyCase c, int hives) {
    return posterior(c, hives)
        .and(
            0,
            2 * season(c, 2) + 3 * season(c, 1) + 2L * Double.BYTES + CELL * (Shortfall.LATE + 1));
  }

  /**
   * {@return what a backtest needs: one quantity of one season, and the season of waiting that the
   * decision rests on}
   *
   * @param c the colony
   * @param hives colonies of the whole run
   */
  public static MemoryNeed ofBacktest(ColonyCase c, int hives) {
    return posterior(c, hives)
        .and(0, season(c, 1) + waiting(c) + 3L * Double.BYTES * c.washes().size());
  }

  /**
   * {@return bytes for a number of simulated colonies}
   *
   * @param colonies simulated colonies
   */
  public long bytes(int colonies) {
    return fixed
        + perColony * colonies
        + perDays * colonies * Math.min(plans, Comparison.kept(colonies))
        + SeasonBanks.bytes(colonies);
  }

  /**
   * {@return most simulated colonies that fit, 0 when none do}
   *
   * @param bytes bytes that may be used
   */
  public int fitting(long bytes) {
    int low = 0;
    int high = MOST_COLONIES;
    while (low < high) {
      int middle = low + (high - low + 1) / 2;
      if (bytes(middle) <= bytes) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return low;
  }
}
