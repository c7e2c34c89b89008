package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.results.ResultsFile;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** What holds for every figure in whatever the program writes or prints. */
final class SoundFiles {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Pattern NO_NUMBER = Pattern.compile("\\b(NaN|Infinity)\\b|[\u221e\ufffd]");
  private static final Pattern CHANCE = Pattern.compile("(chance|meanChance|heldBy|seasonsWith).*");

  /** Quantiles in rising order, by the names that the files give them. */
  private static final List<List<String>> RISING =
      List.of(
          List.of("q05", "q25", "median", "q75", "q95"),
          List.of("low", "median", "high"),
          List.of("low", "share", "high"));

  private final Schema results = schema(ResultsFile.schema());

  private static Schema schema(String text) {
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(text);
  }

  /** Looks at every file of a folder. */
  void checkAll(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        String name = file.getFileName().toString();
        if (name.endsWith(".json")) {
          json(name, Files.readString(file));
        } else if (!name.endsWith(".png")) {
          text(name, Files.readString(file));
        }
        assertThat(Files.size(file)).as(name).isPositive();
      }
    }
  }

  /** Words, tables, pictures: no figure that is none, and nothing of the program's inside. */
  void text(String name, String text) {
    assertThat(NO_NUMBER.matcher(text).results().findFirst()).as("%s: no number", name).isEmpty();
    assertThat(text).as(name).doesNotContain("\tat ", "Exception", "inside the program");
  }

  /**
   * Results: plain numbers, by their schema where they have one, chances and quantiles in order.
   */
  void json(String name, String text) throws IOException {
    text(name, text);
    JsonNode root = JSON.readTree(text);
    if (root.path("format").asText().equals(ResultsFile.FORMAT)) {
      assertThat(
              results.validate(root, c -> c.executionConfig(e -> e.formatAssertionsEnabled(true))))
          .as(name)
          .isEmpty();
    }
    ordered(name, root);
  }

  private void ordered(String where, JsonNode node) {
    node.properties()
        .forEach(
            field -> {
              JsonNode value = field.getValue();
              if (value.isNumber() && CHANCE.matcher(field.getKey()).matches()) {
                assertThat(value.doubleValue()).as(where + "/" + field.getKey()).isBetween(0., 1.);
              }
              ordered(where + "/" + field.getKey(), value);
            });
    if (node.isArray()) {
      node.forEach(value -> ordered(where + "/", value));
    }
    RISING.forEach(names -> rising(where, node, names));
  }

  /** Numbers, open where they are null; or days as text, null and last where they never come. */
  private static void rising(String where, JsonNode node, List<String> names) {
    JsonNode before = null;
    for (String name : names) {
      JsonNode now = node.get(name);
      if (now == null) {
        continue;
      }
      if (before != null) {
        boolean inOrder =
            now.isNull()
                || (now.isNumber()
                    ? before.isNull() || before.doubleValue() <= now.doubleValue()
                    : before.isTextual() && before.textValue().compareTo(now.textValue()) <= 0);
        assertThat(inOrder).as("%s: %s of %s", where, name, node).isTrue();
      }
      before = now;
    }
  }
}
