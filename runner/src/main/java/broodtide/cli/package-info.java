/**
 * The command line: commands, options, help, and what is said when something goes wrong.
 *
 * <p>The entry point is {@link broodtide.cli.Main}. {@link broodtide.cli.Main#run} takes a {@link
 * broodtide.cli.CommandContext}, which says where a command reads and writes and what day it is,
 * and returns the exit code; tests call it as a shell would.
 *
 * <p>A command is one class, named after its word and listed in {@code Broodtide}. It takes its
 * options from mixins, {@code ColonyOptions} for the colony and {@code RunOptions} for how to run,
 * so that the same option has the same name and meaning everywhere. {@code CaseReader} turns
 * options and files into cases, one per colony. {@code PlanCommandRun} and {@code
 * DecisionCommandRun} then work through the colonies one after the other, print the answers and
 * hand what is to be written to {@code broodtide.files}. {@code Manual} sets the help of every
 * command, with an example in each.
 *
 * <p>What holds for every command:
 *
 * <ul>
 *   <li>Exit code 0 is an answer, 2 a refusal, 1 a fault of the program. A refusal is one message
 *       that says what is wrong and how to mend it, and nothing is written. A fault asks for a
 *       report; {@code --trace} adds the stack trace.
 *   <li>Answers go to standard output; progress, notes and refusals to standard error.
 *   <li>Memory is reckoned before any work is done, and a run that would not fit is refused.
 * </ul>
 *
 * <p>Commands only format: figures come from the packages of the library. One command runs per call
 * of {@link broodtide.cli.Main#run}, in the calling thread; the work itself is shared among
 * threads, and their number never changes a result.
 */
@NullMarked
package broodtide.cli;

import org.jspecify.annotations.NullMarked;
