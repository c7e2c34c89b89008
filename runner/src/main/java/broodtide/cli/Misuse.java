package broodtide.cli;

import broodtide.forms.Nearest;
import broodtide.terminal.Terminal;
import java.io.PrintWriter;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says what is wrong with a call, what was most likely meant, and where to read more. */
final class Misuse {
  private Misuse() {}

  static int explain(ParameterException e, String[] args) {
    PrintWriter err = e.getCommandLine().getErr();
    CommandSpec spec = e.getCommandLine().getCommandSpec();
    String said =
        e instanceof UnmatchedArgumentException u ? unknown(u, spec) : plain(e.getMessage());
    said.lines().map(Terminal::clean).forEach(err::println);
    if (e instanceof CommandMissing) {
      err.println();
      // Colour goes by standard output; this is standard error.
      e.getCommandLine().usage(err, CommandLine.Help.Ansi.OFF);
    } else {
      err.println("Try '" + spec.qualifiedName() + " --help'.");
    }
    return Main.BAD_INPUT;
  }

  /** The parser's message without its own terms. */
  private static String plain(@Nullable String message) {
    return Objects.requireNonNullElse(message, "")
        .replaceFirst("^Invalid value for option '([^']*)'( \\(.*?\\))?: ", "$1: ")
        .replaceFirst(
            "^Invalid value for positional parameter at index \\d+ \\((.*?)\\): ", "$1: ");
  }

  private static String unknown(UnmatchedArgumentException e, CommandSpec spec) {
    List<String> unmatched = e.getUnmatched();
    String word = unmatched.get(0);
    if (word.matches("-[0-9.,]+")) {
      return "'" + word + "' is not valid here; numbers are 0 or more";
    }
    if (word.startsWith("-")) {
      Set<String> options = spec.optionsMap().keySet();
      String name = word.split("=", 2)[0];
      if (name.equals("--limits") && options.contains("--threshold")) {
        return "'--limits' is called --threshold now; write --threshold and the name of a set, a"
            + " file, N (mites per 100 bees) or N/300";
      }
      return "'"
          + name
          + "' is not an option of '"
          + spec.qualifiedName()
          + "'"
          + hint(name, options);
    }
    if (!spec.subcommands().isEmpty()) {
      Set<String> commands = spec.subcommands().keySet();
      return "'"
          + word
          + "' is not a command; known are "
          + String.join(", ", commands)
          + hint(word, commands);
    }
    return "'" + word + "' is too much for '" + spec.qualifiedName() + "'; leave it out";
  }

  private static String hint(String word, Set<String> known) {
    return Nearest.hint(word, known);
  }

  /** A call that stops before it says what to do. */
  static final class CommandMissing extends ParameterException {
    private static final long serialVersionUID = 1L;

    CommandMissing(CommandLine line, String message) {
      super(line, message);
    }
  }
}
