/**
 * The report: one HTML page that needs nothing else, its tables, and their short form for the
 * terminal.
 *
 * <p>Entry points:
 *
 * <ul>
 *   <li>{@code PagePart} sets what the page says of one colony; {@link broodtide.report.Page#html}
 *       puts the parts together with how they were made ({@link broodtide.report.RunFacts});
 *   <li>{@link broodtide.report.PlanTerminalTable#of} sets the plans of one colony as a table for
 *       the terminal;
 *   <li>{@code PlanFiles} fills {@code plans.csv} and {@code season.csv} colony by colony;
 *   <li>{@code PlanPictures} and {@link broodtide.report.WindowPicture} turn figures into pictures
 *       of the package {@code chart};
 *   <li>{@code WashTable} says what the washes of a colony show, one by one.
 * </ul>
 *
 * <p>A {@code PlanColumn} is one outcome as it stands in all three tables, the terminal's, the
 * page's and the file's; {@code PlanColumns} is the list of them, so an outcome is declared once.
 *
 * <p>Pictures and style stand inside the page, there is no script, and a content security policy
 * forbids the browser to load anything. Every text and attribute is escaped. A part keeps none of
 * the simulated seasons of its colony, so an apiary of many colonies takes no more memory than one.
 *
 * <p>Figures come from {@code assessment}, {@code decision} and {@code results}, and sentences from
 * {@code words}; here they are only set. The same input gives the same bytes. Values are immutable;
 * what is filled colony by colony belongs to one thread.
 */
@NullMarked
package broodtide.report;

import org.jspecify.annotations.NullMarked;
