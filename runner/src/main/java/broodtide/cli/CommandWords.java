package broodtide.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/**
 * The command line as it stands in a report: options by their full names, nothing of what leaves
 * the figures alone, and every word quoted for a shell, so that the line can be run again from the
 * same folder. Files keep the path they were given by; one in the user's own home begins with a
 * tilde, so that a report tells nobody the user's name.
 */
final class CommandWords {
  private static final Set<String> WITHOUT_WEIGHT =
      Set.of("--out", "--threads", "--json", "--png", "--quiet", "--trace");

  private CommandWords() {}

  static String of(CommandSpec command) {
    ParseResult given = command.commandLine().getParseResult();
    List<String> words = new ArrayList<>(List.of(command.qualifiedName()));
    // An option that is given again is matched again, each time with the values of all.
    for (ArgSpec arg : new LinkedHashSet<>(given.matchedArgs())) {
      if (arg instanceof OptionSpec option) {
        if (!WITHOUT_WEIGHT.contains(option.longestName())) {
          words.addAll(option(option));
        }
      } else {
        arg.originalStringValues().forEach(value -> words.add(word(path(value))));
      }
    }
    return String.join(" ", words);
  }

  private static List<String> option(OptionSpec option) {
    String name = option.longestName();
    if (option.arity().max() == 0) {
      return List.of(name);
    }
    boolean file = option.type() == Path.class;
    List<String> words = new ArrayList<>();
    for (String value : option.originalStringValues()) {
      String word = word(file ? path(value) : value);
      // A value that begins so would be taken for an option or for a file of arguments.
      boolean joined = value.isEmpty() || value.startsWith("-") || value.startsWith("@");
      words.add(joined ? name + "=" + word : name + " " + word);
    }
    return words;
  }

  /** A file's name that begins with nothing that the parser has its own use for. */
  private static String path(String value) {
    boolean plain = value.equals("-") || !(value.startsWith("-") || value.startsWith("@"));
    return plain ? value : "./" + value;
  }

  private static String word(String value) {
    String home = System.getProperty("user.home", "") + "/";
    return home.length() > 2 && value.startsWith(home)
        ? "~/" + quoted(value.substring(home.length()))
        : quoted(value);
  }

  static String quoted(String word) {
    return word.matches("[A-Za-z0-9._:/@%+,=-]*") ? word : "'" + word.replace("'", "'\\''") + "'";
  }
}
