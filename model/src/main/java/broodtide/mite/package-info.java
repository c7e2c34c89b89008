/**
 * The mites: their rates, what happens in a cell, and how mites grow when they are few.
 *
 * <p>Entry points:
 *
 * <ul>
 *   <li>{@link broodtide.mite.MiteRates} are the rates of the mites: how fast they enter worker and
 *       drone cells, how long they stay on bees, how many mothers and daughters come out again, and
 *       how they share cells. Each component's {@link broodtide.measure.Measure} gives meaning,
 *       unit, range and source.
 *   <li>{@link broodtide.mite.StockTraits} is what the stock of bees and the strain of mites bring
 *       to reproduction.
 *   <li>{@link broodtide.mite.Immigration} is the mites that come in on drifting and robbing bees,
 *       in windows of days.
 *   <li>{@link broodtide.mite.CellLoad} holds the closed forms for mothers that share cells:
 *       daughters per mother, empty cells, and bees that emerge overtly infected.
 *   <li>{@link broodtide.mite.Renewal} gives the growth of few mites in constant surroundings from
 *       the Euler-Lotka equation, once for each way of keeping time. The engines are checked
 *       against it without running a season.
 * </ul>
 *
 * <p>Rates that depend on mites alone stand here. What a treatment does to them stands in {@code
 * broodtide.control}.
 *
 * <p>All types are immutable and may be shared between threads; values outside their range are
 * refused with {@link broodtide.measure.OutOfRange}.
 *
 * @since 0.2.0
 */
@NullMarked
package broodtide.mite;

import org.jspecify.annotations.NullMarked;
