package broodtide.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import broodtide.catalog.Catalog;
import broodtide.catalog.ClimateFile;
import broodtide.forms.BadInput;
import broodtide.forms.Source;
import broodtide.lesson.StudySchema;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever is done to a study, it is read or refused with {@link BadInput}; nothing else comes. */
@Tag("slow")
class StudyMutationTest {
  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;
  private static final SchemaCheck SCHEMA = new SchemaCheck(StudySchema.study());

  private static List<String> sound() {
    List<String> texts = new ArrayList<>();
    texts.add(Texts.STUDY);
    texts.add(Texts.study("\"temperate\"", ClimateFile.write(Catalog.climate("cool-maritime"))));
    for (String name : List.of("late-wash", "southern-year")) {
      texts.add(Studies.SHELF.find(name).text());
      texts.add(StudyFile.write(Studies.named(name)));
    }
    return texts;
  }

  /** Changed values: read or refused; and what is read, the schema allows too. */
  @Test
  void changedValues() {
    SplittableRandom random = new SplittableRandom(20_270_815);
    List<String> texts = sound();
    int read = 0;
    for (int i = 0; i < 1000; i++) {
      JsonNode tree = SchemaCheck.parse(texts.get(i % texts.size()));
      for (int k = random.nextInt(3); k >= 0; k--) {
        change(tree, random);
      }
      if (study(tree.toString(), i).isPresent()) {
        read++;
        assertThat(SCHEMA.errors(tree)).as("mutation %d: %s", i, tree).isEmpty();
      }
    }
    assertThat(read).as("some survive, most do not").isBetween(50, 500);
  }

  /** Changed bytes. */
  @Test
  void changedBytes(@TempDir Path dir) throws Exception {
    SplittableRandom random = new SplittableRandom(15_082_027);
    List<String> texts = sound();
    Path file = dir.resolve("s.json");
    for (int i = 0; i < 1000; i++) {
      byte[] bytes = texts.get(i % texts.size()).getBytes(StandardCharsets.UTF_8);
      for (int k = random.nextInt(4); k >= 0; k--) {
        bytes = AnyFile.spoiled(bytes, random);
      }
      Files.write(file, bytes);
      study(Source.of(file), i);
    }
  }

  private static Optional<Study> study(String text, int i) {
    return study(Source.of("s.json", text), i);
  }

  private static Optional<Study> study(Source source, int i) {
    try {
      Study study = StudyFile.read(source);
      assertThat(study.scenarios()).isNotEmpty();
      study.member(1);
      return Optional.of(study);
    } catch (BadInput bad) {
      assertThat(bad.faults()).isNotEmpty();
      return Optional.empty();
    } catch (RuntimeException | Error e) {
      return fail("mutation " + i + " of " + source, e);
    }
  }

  private static void change(JsonNode tree, SplittableRandom random) {
    List<JsonNode> containers = new ArrayList<>();
    collect(tree, containers);
    JsonNode target = containers.get(random.nextInt(containers.size()));
    if (target instanceof ObjectNode object && !object.isEmpty()) {
      List<String> names = new ArrayList<>();
      object.fieldNames().forEachRemaining(names::add);
      String name = names.get(random.nextInt(names.size()));
      switch (random.nextInt(4)) {
        case 0 -> object.remove(name);
        case 1 -> object.set(name + "x", object.remove(name));
        default -> object.set(name, other(object.get(name), random));
      }
    } else if (target instanceof ArrayNode array && !array.isEmpty()) {
      int at = random.nextInt(array.size());
      switch (random.nextInt(3)) {
        case 0 -> array.remove(at);
        case 1 -> array.add(array.get(at).deepCopy());
        default -> array.set(at, other(array.get(at), random));
      }
    }
  }

  private static void collect(JsonNode node, List<JsonNode> containers) {
    if (node.isContainerNode()) {
      containers.add(node);
      node.forEach(child -> collect(child, containers));
    }
  }

  private static JsonNode other(JsonNode value, SplittableRandom random) {
    double[] numbers = {0, 1, -1, 0.5, 2, 1e-300, 1e6, 1e300, -1e300, 1e18, 2027, 100, 0.05};
    List<String> words =
        List.of(
            "", " ", "2027-08-15", "2199-12-31", "1900-01-01", "08-15", "02-29", "null", "north");
    return switch (random.nextInt(8)) {
      case 0 -> JSON.nullNode();
      case 1 -> JSON.booleanNode(random.nextBoolean());
      case 2 -> JSON.textNode(words.get(random.nextInt(words.size())));
      case 3 -> JSON.textNode("\uD83D\uDC1D\u0000".repeat(1 + random.nextInt(200)));
      case 4 -> JSON.arrayNode().add(value.deepCopy());
      case 5 -> value.isNumber() ? JSON.numberNode(value.doubleValue() * 1.2) : JSON.objectNode();
      default -> JSON.numberNode(numbers[random.nextInt(numbers.length)]);
    };
  }
}
