/**
 * Tables of comma-separated values, as spreadsheets and people write them.
 *
 * <p>The entry points, in the order of their use:
 *
 * <ul>
 *   <li>{@link broodtide.table.SheetText#read} reads a file within a bound and decodes it;
 *   <li>{@link broodtide.table.Sheet#of} finds the header line and whether commas, semicolons or
 *       tabs part the cells;
 *   <li>{@link broodtide.table.Header#check} says which columns are missing and which are not used;
 *   <li>{@link broodtide.table.Sheet#each} goes through the rows, and a {@link
 *       broodtide.table.CellReader} reads cells by the name of their column;
 *   <li>{@link broodtide.table.PastDays} reads the column of dates. The whole column is looked
 *       through before any date is read, since {@code 03/04/2025} alone does not say which number
 *       is the month.
 * </ul>
 *
 * <p>What cannot be read goes to {@link broodtide.forms.Faults} with line, column, value and what
 * is allowed. Reading goes on after a fault, so that a user hears of all of them at once. Things
 * that were read but may not be meant are notes, not faults.
 *
 * <p>What a row means is not known here; {@code study} turns rows into washes and treatments.
 *
 * <p>Texts and sheets are immutable. Readers of cells and dates belong to one file and one thread.
 */
@NullMarked
package broodtide.table;

import org.jspecify.annotations.NullMarked;
