/**
 * What a beekeeper can do against mites, placed in the calendar.
 *
 * <p>A {@link broodtide.control.Control} is one measure with a name, a first and a last day. The
 * interface is sealed, and its kinds are records:
 *
 * <ul>
 *   <li>{@link broodtide.control.MiticideCourse}, a {@link broodtide.control.Miticide} given once
 *       or several times;
 *   <li>{@link broodtide.control.DroneCombRemoval}, drone comb given and cut out with its brood;
 *   <li>{@link broodtide.control.QueenCaging}, {@link broodtide.control.Split} and {@link
 *       broodtide.control.Requeening}, which break the brood.
 * </ul>
 *
 * <p>A {@link broodtide.control.Plan} is a list of them under a name; {@link
 * broodtide.control.Plan#waiting} makes the one that does nothing. A plan whose brood breaks
 * overlap is refused with {@link broodtide.measure.Unworkable}.
 *
 * <p>Controls say what is done and when, with hazards per day and shares. They do not act
 * themselves: {@link broodtide.engine.Schedule} writes a plan out day by day for the engines.
 * Miticides are named by active substance. Controls with usual values, their sources and their
 * cautions come from the package {@code catalog}; whether one suits a day is for {@code assessment}
 * to say. The label and the law come first in any case.
 *
 * <p>All types are immutable and may be shared between threads; values outside their range are
 * refused with {@link broodtide.measure.OutOfRange}.
 *
 * @since 0.2.0
 */
@NullMarked
package broodtide.control;

import org.jspecify.annotations.NullMarked;
