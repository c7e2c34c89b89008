package broodtide.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.IHelpSectionRenderer;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * Sets the help of every command like a page of a manual: name, call, description, options by
 * subject, commands, examples, exit codes.
 */
final class Manual {
  private static final String INDENT = "  ";
  private static final Map<Class<?>, String> SUBJECTS = subjects();

  private Manual() {}

  /** Gives a command and those below it their pages. */
  static void bind(CommandLine line) {
    Map<String, IHelpSectionRenderer> pages = new LinkedHashMap<>();
    pages.put("name", Manual::name);
    pages.put("call", help -> part(help, "Usage", INDENT + call(spec(help)) + "\n"));
    pages.put("description", help -> "\n" + help.description());
    pages.put("options", Manual::options);
    pages.put("commands", help -> part(help, "Commands", help.commandList()));
    pages.put("examples", help -> part(help, examples(help), help.footer()));
    pages.put("codes", help -> part(help, "Exit codes", codes()));
    line.setHelpSectionMap(pages);
    line.setHelpSectionKeys(List.copyOf(pages.keySet()));
  }

  private static Map<Class<?>, String> subjects() {
    Map<Class<?>, String> subjects = new LinkedHashMap<>();
    subjects.put(ColonyOptions.class, "The colony and its place");
    subjects.put(RunOptions.class, "The run and its results");
    subjects.put(JsonOption.class, "The run and its results");
    return subjects;
  }

  private static CommandSpec spec(Help help) {
    return help.commandSpec();
  }

  private static String name(Help help) {
    String header = help.header().strip();
    String name = spec(help).qualifiedName();
    return help.colorScheme().text("@|bold " + name + "|@") + ": " + header + "\n";
  }

  private static String part(Help help, String heading, String text) {
    return text.isBlank()
        ? ""
        : "\n" + help.colorScheme().text("@|bold " + heading + "|@\n") + text;
  }

  /** What must be given comes first, by name; the rest is said to be there. */
  private static String call(CommandSpec spec) {
    List<String> words = new ArrayList<>(List.of(spec.qualifiedName()));
    for (PositionalParamSpec p : spec.positionalParameters()) {
      words.add(p.required() ? p.paramLabel() : "[" + p.paramLabel() + "]");
    }
    spec.options().stream()
        .filter(ArgSpec::required)
        .forEach(o -> words.add(o.longestName() + " " + o.paramLabel()));
    words.add(spec.subcommands().isEmpty() ? "[OPTIONS]" : "COMMAND");
    return String.join(" ", words);
  }

  private static String options(Help help) {
    CommandSpec spec = spec(help);
    Map<String, List<ArgSpec>> bySubject = new LinkedHashMap<>();
    bySubject.put("For this command", new ArrayList<>());
    SUBJECTS.values().forEach(s -> bySubject.put(s, new ArrayList<>()));
    bySubject.put("Help", new ArrayList<>());
    Stream.concat(spec.positionalParameters().stream(), spec.options().stream())
        .filter(a -> !a.hidden())
        .forEach(a -> bySubject.computeIfAbsent(subject(spec, a), s -> new ArrayList<>()).add(a));
    return bySubject.entrySet().stream()
        .map(e -> part(help, e.getKey(), list(help, e.getValue())))
        .collect(Collectors.joining());
  }

  private static String subject(CommandSpec spec, ArgSpec arg) {
    if (arg instanceof OptionSpec o && (o.usageHelp() || o.versionHelp())) {
      return "Help";
    }
    return spec.mixins().values().stream()
        .filter(m -> m.args().contains(arg))
        .map(m -> SUBJECTS.get(m.userObject().getClass()))
        .filter(Objects::nonNull)
        .findFirst()
        .orElse("For this command");
  }

  private static String list(Help help, List<ArgSpec> args) {
    CommandSpec spec = spec(help);
    // The same columns in every part of the page.
    Help.Layout layout =
        help.createDefaultLayout(spec.options(), spec.positionalParameters(), help.colorScheme());
    for (ArgSpec arg : args) {
      if (arg instanceof PositionalParamSpec p) {
        layout.addPositionalParameter(p, help.createDefaultParamLabelRenderer());
      } else if (arg instanceof OptionSpec o) {
        layout.addOption(o, help.createDefaultParamLabelRenderer());
      }
    }
    return layout.toString();
  }

  private static String examples(Help help) {
    long calls = help.footer().lines().filter(line -> line.contains("broodtide ")).count();
    return calls == 1 ? "Example" : "Examples";
  }

  private static String codes() {
    return String.format(
        Locale.ROOT,
        "  %d  success%n  %d  a fault of the program itself; please report it%n"
            + "  %d  invalid input or usage; nothing was written%n",
        Main.OK,
        Main.INTERNAL,
        Main.BAD_INPUT);
  }
}
