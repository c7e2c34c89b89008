/**
 * The bees: the rates at which a colony lays, nurses, ages and dies, and the days that brood takes.
 *
 * <p>Entry points:
 *
 * <ul>
 *   <li>{@link broodtide.colony.BeeRates} are the rates of the bees: laying against the adults at
 *       hand, survival of the brood, the life of hive bees, foragers and winter bees, and the harm
 *       that mites and infection do to it. Each component's {@link broodtide.measure.Measure} gives
 *       meaning, unit, range and source.
 *   <li>{@link broodtide.colony.BroodTimes#WORKER} and {@link broodtide.colony.BroodTimes#DRONE}
 *       are the days as egg, as larva and under the capping. They are whole days, since the daily
 *       engine keeps brood by day of age.
 * </ul>
 *
 * <p>A colony's rates hold all year. What changes with the season stands in {@link
 * broodtide.season.Climate}, and what sets one colony apart from the next in {@code
 * broodtide.engine.Member}. Nothing is simulated here: both engines take their rates from these
 * records, and so they can be held to each other.
 *
 * <p>To change a rate, build the record anew with {@link broodtide.measure.Measures#build}; a value
 * outside its range is refused with {@link broodtide.measure.OutOfRange}, which names it.
 *
 * <p>All types are immutable and may be shared between threads.
 *
 * @since 0.2.0
 */
@NullMarked
package broodtide.colony;

import org.jspecify.annotations.NullMarked;
