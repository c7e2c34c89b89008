/**
 * Results as JSON, for programs and spreadsheets to read.
 *
 * <p>Entry points:
 *
 * <ul>
 *   <li>{@link broodtide.results.ResultsFile} writes the results of every command. Colonies are
 *       added one by one, with plans as a {@link broodtide.results.ColonyResult}, and {@link
 *       broodtide.results.ResultsFile#text} gives the file;
 *   <li>{@link broodtide.results.ResultsFile#schema} gives the JSON Schema that describes every
 *       field.
 * </ul>
 *
 * <p>Dates are ISO 8601, infestations are mites per 100 adult bees, shares and chances run from 0
 * to 1, bands are objects of quantiles, and what is not known is null. Numbers carry four
 * significant digits. The number of the format stands in every file; readers should pass over
 * fields that they do not know.
 *
 * <p>A {@link broodtide.results.ColonyResult} also feeds the report and the pictures, so that they
 * and the file show the same figures. Only figures are set here: they come from {@code assessment}
 * and {@code decision}, and nothing is worked out anew.
 *
 * <p>The same input, seed and version give the same bytes. A file that is being filled belongs to
 * one thread.
 *
 * @since 0.2.0
 */
@NullMarked
package broodtide.results;

import org.jspecify.annotations.NullMarked;
