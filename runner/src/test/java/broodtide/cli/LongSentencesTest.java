package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import picocli.CommandLine.Model.OptionSpec;

/**
 * No sentence that a user can read has more than 25 words. What commands answer is looked at in
 * {@link BannedTurnsTest}, which runs them.
 */
class LongSentencesTest {
  private static final ObjectMapper JSON =
      JsonMapper.builder().enable(JsonReadFeature.ALLOW_JAVA_COMMENTS).build();

  /** Fields that cite a work; titles and lists of authors are as long as they are. */
  private static final Set<String> CITATIONS = Set.of("source");

  private static List<String> named(Path file, List<String> found) {
    return found.stream().map(s -> file.normalize() + ": " + s).toList();
  }

  private static List<String> in(Path folder, String ends, Function<String, List<String>> reader)
      throws IOException {
    List<String> out = new ArrayList<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(f -> f.toString().matches(ends)).sorted().toList()) {
        out.addAll(named(file, reader.apply(Files.readString(file))));
      }
    }
    return out;
  }

  private static void words(JsonNode node, List<String> out) {
    if (node.isTextual()) {
      out.addAll(LongSentences.of(node.textValue()));
    }
    node.properties()
        .forEach(
            field -> {
              if (!CITATIONS.contains(field.getKey())) {
                words(field.getValue(), out);
              }
            });
    if (node.isArray()) {
      node.forEach(item -> words(item, out));
    }
  }

  private static List<String> json(String text) {
    List<String> out = new ArrayList<>();
    try {
      words(JSON.readTree(text), out);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
    return out;
  }

  @Test
  void pagesInMarkdown() throws IOException {
    List<String> out = new ArrayList<>();
    for (String page :
        List.of(
            "README.md",
            "model/LIBRARY.md",
            "model/SCIENCE.md",
            "runner/CHANGES.md",
            "runner/TEACHING.md")) {
      Path file = Path.of("..", page);
      String prose = BannedTurnsTest.withoutWritten(Files.readString(file));
      out.addAll(named(file, LongSentences.ofMarkdown(prose)));
    }
    assertThat(out).isEmpty();
  }

  @Test
  void pagesAndLeaflets() throws IOException {
    Path resources = Path.of("src/main/resources");
    assertThat(in(resources, ".*\\.html", LongSentences::ofPage)).isEmpty();
    assertThat(in(resources, ".*\\.txt", LongSentences::ofTerminal)).isEmpty();
    assertThat(in(Path.of("src/dist"), ".*\\.txt", LongSentences::ofTerminal)).isEmpty();
    assertThat(in(resources, ".*\\.js", text -> quoted(BannedTurnsTest.strings(text)))).isEmpty();
  }

  @Test
  void libraryAndSchema() throws IOException {
    assertThat(in(Path.of("../scenarios/library"), ".*\\.json", LongSentencesTest::json)).isEmpty();
    assertThat(in(Path.of("../scenarios/src/main/resources"), ".*\\.json", LongSentencesTest::json))
        .isEmpty();
  }

  /** A string of a source is a paragraph; a text block has several. */
  private static List<String> quoted(String strings) {
    List<String> out = new ArrayList<>();
    for (String line : strings.split("\n\\s*\n|(?<=\")\n")) {
      out.addAll(LongSentences.of(line.replace("\\n", " ").replace("%n", " ")));
    }
    return out;
  }

  @Test
  void stringsOfTheSources() throws IOException {
    for (String module : List.of("model", "scenarios", "runner")) {
      assertThat(
              in(
                  Path.of("..", module, "src/main/java"),
                  ".*\\.java",
                  text -> quoted(BannedTurnsTest.strings(text))))
          .isEmpty();
    }
  }

  @Test
  void helps() {
    List<String> out = new ArrayList<>();
    ManualTest.specs()
        .forEach(
            (name, spec) -> {
              for (OptionSpec option : spec.options()) {
                out.addAll(LongSentences.of(String.join(" ", option.description())));
              }
              out.addAll(LongSentences.ofTerminal(Bench.run((name + " --help").split(" ")).out()));
            });
    assertThat(out).isEmpty();
  }

  @Test
  void aLongSentenceIsFound() {
    String eight = "one two three four five six seven eight";
    String six = "one two three four five six";
    String twentyFive = String.join(" ", eight, eight, eight, "nine");
    assertThat(LongSentences.of(twentyFive + ". E" + eight)).isEmpty();
    assertThat(LongSentences.of(twentyFive + "\nten. Eleven")).hasSize(1);
    assertThat(LongSentences.of(twentyFive + " (Fries et al. 2006). T" + six)).hasSize(1);
    assertThat(LongSentences.ofPage("<p>" + twentyFive + "</p><p>" + six + "</p>")).isEmpty();
    assertThat(LongSentences.ofTerminal(twentyFive + "\n" + six + "\n")).hasSize(1);
    assertThat(LongSentences.ofTerminal(twentyFive + "\na   column\n" + six)).isEmpty();
    assertThat(LongSentences.ofMarkdown(twentyFive + "\n- " + six)).isEmpty();
    assertThat(LongSentences.ofMarkdown("| " + twentyFive + " | " + six + " |")).isEmpty();
  }
}
