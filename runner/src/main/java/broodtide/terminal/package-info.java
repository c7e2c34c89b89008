/**
 * Text and tables on a terminal, or in a file or pipe that stands in for one.
 *
 * <p>Entry points:
 *
 * <ul>
 *   <li>{@link broodtide.terminal.Terminal#here} finds out how wide the terminal is, and whether it
 *       shows colours and Unicode; {@link broodtide.terminal.Terminal#of} does so from an
 *       environment that is handed in;
 *   <li>{@link broodtide.terminal.Terminal#wrap} breaks a text into lines, {@link
 *       broodtide.terminal.Terminal#strong} and {@link broodtide.terminal.Terminal#faint} set it
 *       off;
 *   <li>{@link broodtide.terminal.Terminal#table} sets a {@link broodtide.terminal.Table} of
 *       columns and rows. Where it does not fit, sentences are broken within their column; where
 *       that is not enough, each row becomes a small list.
 *   <li>{@link broodtide.terminal.WatchedOutput} remembers why an output could not be written,
 *       which print writers swallow.
 * </ul>
 *
 * <p>All of these return text; printing is the caller's. Without colour or Unicode the same words
 * appear, so nothing is said by colour alone. The width comes from the environment, and a usual one
 * is taken where nothing is known; the same width gives the same text on any machine.
 *
 * <p>What the text means is not known here: the package uses no other one of the project.
 *
 * <p>Terminals and tables are immutable and may be shared between threads; a watched output belongs
 * to one.
 */
@NullMarked
package broodtide.terminal;

import org.jspecify.annotations.NullMarked;
