/**
 * The year of a colony as a place sets it.
 *
 * <p>A {@link broodtide.season.Climate} is the whole of it: how much an average queen could lay,
 * the share of drone eggs, which emerging workers become winter bees, when these go to work in
 * spring, the mean of the daily highs, and when supers are usually on and winter bees are reared.
 * It says nothing of mites, and nothing of the weather of one certain year.
 *
 * <p>Entry points:
 *
 * <ul>
 *   <li>Climates usually come from a file, through the package {@code catalog}; {@link
 *       broodtide.season.Climate#inSouth} turns one written for the north by half a year, and
 *       {@link broodtide.season.Climate#with} moves its supers and winter bees.
 *   <li>{@link broodtide.season.Curve#through} makes a quantity over the year from knots, straight
 *       in between; {@link broodtide.season.Curve#at} reads one day and {@link
 *       broodtide.season.Curve#daily} a stretch of them.
 *   <li>{@link broodtide.season.YearSpan} is a stretch of the year that comes back every year and
 *       may run over New Year.
 * </ul>
 *
 * <p>Days count by their share of the year, so that leap years need no care. Values outside their
 * range are refused with {@link broodtide.measure.OutOfRange}.
 *
 * <p>All types are immutable and may be shared between threads.
 *
 * @since 0.2.0
 */
@NullMarked
package broodtide.season;

import org.jspecify.annotations.NullMarked;
