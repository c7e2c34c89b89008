/**
 * Values with their meaning. A numeric component of a record carries a {@link
 * broodtide.measure.Measure}: default, unit, range, standing and source in one place. Everything
 * that speaks of the value reads it from there: range checks, study files, the published schema and
 * the table of parameters, so none of them can drift from the code.
 *
 * <p>Entry points:
 *
 * <ul>
 *   <li>{@link broodtide.measure.Measures#build} makes a record of its defaults, with some of them
 *       replaced; {@link broodtide.measure.Measures#checkAll} is called by the record itself and
 *       checks every range; {@link broodtide.measure.Measures#table} lists what stands in it.
 *   <li>{@link broodtide.measure.Tag} says how a value is known: seen in a source, computed from
 *       data, derived, recalled, or a choice of this project.
 *   <li>{@link broodtide.measure.OutOfRange#check} checks one value that has no record of its own.
 * </ul>
 *
 * <p>The package also holds the root of everything that a user may be refused: {@link
 * broodtide.measure.RefusedException}, with {@link broodtide.measure.OutOfRange} for one value
 * outside its range, and {@link broodtide.measure.Unworkable} for values that are each allowed but
 * cannot go together. Their messages name the value, what is allowed and how to mend it. Any other
 * exception is a fault of the program or of the Java code that calls it.
 *
 * <p>Nothing here keeps state. All methods may be called by any number of threads.
 *
 * @since 0.2.0
 */
@NullMarked
package broodtide.measure;

import org.jspecify.annotations.NullMarked;
