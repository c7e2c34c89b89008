package broodtide.control;

import broodtide.mite.StockTraits;
import java.time.LocalDate;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/**
 * What a control can do to a colony. A control says on which days it does what, and whoever plays
 * the colony carries it out. What falls on days that are not played is passed over. When two
 * controls take a share of the same bees or cells on one day, the second takes its share of what
 * the first left.
 *
 * @since 0.2.0
 */
public interface ControlEffects {
  /**
   * The queen lays no eggs.
   *
   * @param from first day
   * @param days number of days, 0 or more
   */
  void stopLaying(LocalDate from, int days);

  /**
   * The colony rears drones on comb that it was given. The share fades towards either end of the
   * drone season with the season's own share, and where that is larger, it holds.
   *
   * @param from first day
   * @param until the day on which this ends, which is no longer part of it
   * @param share share of eggs laid in drone cells at the height of the season, 0 to 0.5
   */
  void rearDrones(LocalDate from, LocalDate until, double share);

  /**
   * Drone brood is cut out in the morning, with its mites.
   *
   * @param day the day
   * @param share share of the drone brood, 0 to 1
   */
  void cutDroneBrood(LocalDate day, double share);

  /**
   * Adult bees are moved away in the morning, with their mites.
   *
   * @param day the day
   * @param share share of the adult bees, 0 to 1
   */
  void moveBees(LocalDate day, double share);

  /**
   * Brood is moved away in the morning, with its mites.
   *
   * @param day the day
   * @param share share of the brood, 0 to 1
   */
  void moveBrood(LocalDate day, double share);

  /**
   * A miticide acts, in one course whose efficacy is drawn once for each colony.
   *
   * @param substance how it acts
   * @param from first day
   * @param to last day
   * @param acts whether it acts on a day between them
   */
  void treat(Miticide substance, LocalDate from, LocalDate to, Predicate<LocalDate> acts);

  /**
   * Bees of another stock take over.
   *
   * @param stock traits of the new stock
   * @param takenOver share of the new stock's traits that holds on a day, 0 to 1
   */
  void replaceStock(StockTraits stock, ToDoubleFunction<LocalDate> takenOver);
}
