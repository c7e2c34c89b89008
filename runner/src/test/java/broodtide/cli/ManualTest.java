package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.io.Writer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** Help, completion and what is said of a misspelt call, for every command. */
class ManualTest {
  private static final PrintWriter NOWHERE = new PrintWriter(Writer.nullWriter());

  /** Every command that does something, as it is called. */
  static List<String> commands() {
    List<String> out = new ArrayList<>();
    specs().keySet().stream().filter(name -> !name.equals("study")).forEach(out::add);
    return out;
  }

  private static List<OptionSpec> options(String command) {
    return Objects.requireNonNull(specs().get(command)).options();
  }

  /** Every command by the way it is called. */
  static Map<String, CommandSpec> specs() {
    Map<String, CommandSpec> out = new LinkedHashMap<>();
    gather(Broodtide.line(CommandContext.here(NOWHERE, NOWHERE)), "", out);
    return out;
  }

  private static void gather(CommandLine line, String above, Map<String, CommandSpec> out) {
    line.getSubcommands()
        .forEach(
            (name, below) -> {
              out.put((above + " " + name).strip(), below.getCommandSpec());
              gather(below, above + " " + name, out);
            });
  }

  @ParameterizedTest
  @MethodSource("commands")
  void everyCommandHasAPageWithAnExampleAndExitCodes(String command) {
    Bench.Outcome r = Bench.run(Stream.of((command + " --help").split(" ")).toArray(String[]::new));
    assertThat(r.code()).isZero();
    assertThat(r.err()).isEmpty();
    assertThat(r.out())
        .startsWith("broodtide " + command + ": ")
        .contains("\nUsage\n  broodtide " + command, "\nExample", "  broodtide " + command)
        .contains("\nExit codes\n  0  ", "\n  1  ", "\n  2  ")
        .contains("--json ");
    assertThat(r.out().lines()).allMatch(line -> line.length() <= 80);
  }

  /** The script names the words of an option by its label, so that one label has one list. */
  @ParameterizedTest
  @MethodSource("commands")
  void optionsWithWordsHaveLabelsOfTheirOwn(String command) {
    Map<String, List<String>> words = new LinkedHashMap<>();
    for (OptionSpec option : options(command)) {
      if (option.completionCandidates() != null) {
        List<String> known = new ArrayList<>();
        option.completionCandidates().forEach(known::add);
        assertThat(known).as(option.longestName()).isNotEmpty();
        assertThat(words.put(option.paramLabel(), known)).as(option.longestName()).isNull();
      }
    }
    for (OptionSpec option : options(command)) {
      if (option.completionCandidates() == null) {
        assertThat(words).as(option.longestName()).doesNotContainKey(option.paramLabel());
      }
    }
  }

  @Test
  void completionKnowsCommandsOptionsAndWords() throws Exception {
    String script = Bench.run("completion").out();
    assertThat(script)
        .contains("complete -F _complete_broodtide", "backtest", "--climate", "cool-maritime")
        .contains("oxalic-dribble-caged", "strange-sheppard-2001")
        .containsPattern(
            "'--washes'\\)\\s+local IFS=\\S+\\s+type compopt .*\\s+COMPREPLY=.*compgen -f");
    JsonNode json = new ObjectMapper().readTree(Bench.run("completion", "--json").out());
    assertThat(json.path("script").asText().strip()).isEqualTo(script.strip());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      value = {
        "comapre w.csv | 'comapre' is not a command; known are wash, growth",
        "comapre w.csv | did you mean \"\"compare\"\"?",
        "study nwe x | did you mean \"\"new\"\"?",
        "compare w.csv --climat temperate | '--climat' is not an option of 'broodtide compare'; did"
            + " you mean \"\"--climate\"\"?",
        "compare w.csv --climat=temperate | did you mean \"\"--climate\"\"?",
        "compare w.csv x --climate temperate | 'x' is too much for 'broodtide compare'",
        "compare w.csv --climate temperat | did you mean \"\"temperate\"\"?",
        "compare w.csv --climate temperate --with tymol | did you mean \"\"thymol\"\"?",
        "wash 3 --date 2026-08-01 --climate temperate --threshold strange-shepard-2001 | did you"
            + " mean \"\"strange-sheppard-2001\"\"?",
        "wash 3 --date 2026-08-01 --climate temperate --method alchohol | did you mean"
            + " \"\"alcohol\"\"?",
        "windows w.csv --climate temperate --outcome infestaton | did you mean"
            + " \"\"infestation\"\"?",
        "wash x --date 2026-08-01 --climate temperate | MITES: 'x' is no whole number",
        "wash 3 --date soon --climate temperate | --date: 'soon' cannot be read as a date"
      })
  void saysWhatWasMostLikelyMeant(String call, String said) {
    Bench.Outcome r = Bench.run(call.split(" "));
    assertThat(r.code()).isEqualTo(2);
    assertThat(r.err()).contains(said.replace("\"\"", "\""));
    assertThat(r.out()).isEmpty();
  }

  @Test
  void calledWithNothingItShowsItsCommands() {
    Bench.Outcome r = Bench.run();
    assertThat(r.code()).isEqualTo(2);
    assertThat(r.err()).startsWith("Give a command.").contains("\nCommands\n", "compare");
    assertThat(r.out()).isEmpty();
  }
}
