package broodtide.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/**
 * The command line as it may stand in a report: options by their full names, files without their
 * folders, and nothing of what leaves the figures alone, so that it is the same on every machine.
 */
final class CommandWords {
  private static final Set<String> WITHOUT_WEIGHT =
      Set.of("--out", "--threads", "--json", "--quiet", "--trace");

  private CommandWords() {}

  static String of(CommandSpec command) {
    ParseResult given = command.commandLine().getParseResult();
    List<String> words = new ArrayList<>(List.of(command.qualifiedName()));
    for (ArgSpec arg : given.matchedArgs()) {
      String name = arg instanceof OptionSpec option ? option.longestName() : "";
      if (WITHOUT_WEIGHT.contains(name)) {
        continue;
      }
      boolean flag = arg.isOption() && ((OptionSpec) arg).arity().max() == 0;
      if (!name.isEmpty()) {
        words.add(name);
      }
      if (!flag) {
        arg.originalStringValues().forEach(value -> words.add(quoted(file(value))));
      }
    }
    return String.join(" ", words);
  }

  private static String file(String value) {
    if (!value.contains("/") && !value.contains("\\")) {
      return value;
    }
    Path last = Path.of(value.replace('\\', '/')).getFileName();
    return last == null ? value : last.toString();
  }

  static String quoted(String word) {
    return word.matches("[A-Za-z0-9._:@%+,=-]+") ? word : "'" + word.replace("'", "'\\''") + "'";
  }
}
