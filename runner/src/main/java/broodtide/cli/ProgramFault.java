package broodtide.cli;

import broodtide.terminal.Terminal;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What is said when the program itself is at fault: one line to report, without a stack trace. */
final class ProgramFault {
  private ProgramFault() {}

  /**
   * The line.
   *
   * @param e what was thrown
   * @param traced whether the stack trace follows, so that nobody needs to ask for it
   * @param args the command and its options
   */
  static String line(Throwable e, boolean traced, List<String> args) {
    String command =
        Stream.concat(Stream.of("broodtide"), args.stream().map(CommandWords::quoted))
            .collect(Collectors.joining(" "));
    String name = e.getClass().getSimpleName();
    String text = e.getMessage() == null ? "" : ": " + e.getMessage();
    return Terminal.clean(
        "a fault of the program, not of your input ("
            + name
            + text.replaceAll("\\R", " ")
            + "); please report it with version "
            + Version.number()
            + " and the command "
            + command.replaceAll("\\R", " ")
            + (traced ? "; the stack trace follows" : "; --trace adds the stack trace"));
  }
}
