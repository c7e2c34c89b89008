package broodtide.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.catalog.Catalog;
import broodtide.catalog.ClimateFile;
import broodtide.catalog.ControlTemplateFile;
import broodtide.catalog.Shelf;
import broodtide.catalog.ThresholdFile;
import broodtide.forms.BadInput;
import broodtide.forms.Source;
import broodtide.lesson.LessonFile;
import broodtide.lesson.Lessons;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** A number where a text belongs is refused, at every place of every kind of file. */
class NumbersForTextTest {
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(JsonReadFeature.ALLOW_JAVA_COMMENTS).build();

  @Test
  void climates() throws JsonProcessingException {
    check(Catalog.CLIMATES, "temperate", ClimateFile::read);
  }

  @Test
  void controls() throws JsonProcessingException {
    check(Catalog.CONTROLS, "thymol", ControlTemplateFile::read);
  }

  @Test
  void thresholds() throws JsonProcessingException {
    check(Catalog.THRESHOLDS, "gds-france-2026", ThresholdFile::read);
  }

  @Test
  void studies() throws JsonProcessingException {
    check(Studies.SHELF, "larkmeadow", StudyFile::read);
  }

  @Test
  void lessons() throws JsonProcessingException {
    check(Lessons.SHELF, Lessons.SHELF.names().get(0), LessonFile::read);
  }

  private static void check(Shelf<?> shelf, String name, Consumer<Source> read)
      throws JsonProcessingException {
    Source source = shelf.find(name);
    JsonNode root = JSON.readTree(source.text());
    List<Runnable> undo = new ArrayList<>();
    List<Runnable> spoil = new ArrayList<>();
    texts(root, spoil, undo);
    assertThat(spoil).isNotEmpty();
    for (int i = 0; i < spoil.size(); i++) {
      spoil.get(i).run();
      Source spoilt = Source.of("spoilt.json", root.toString());
      assertThatThrownBy(() -> read.accept(spoilt))
          .as(root.toString())
          .isInstanceOf(BadInput.class)
          .hasMessageContaining("\"7\" is not valid");
      undo.get(i).run();
    }
  }

  /** A way to put the number 7 in the place of each text, and a way back. */
  private static void texts(JsonNode node, List<Runnable> spoil, List<Runnable> undo) {
    if (node instanceof ObjectNode object) {
      for (Map.Entry<String, JsonNode> each : object.properties()) {
        String field = each.getKey();
        JsonNode value = each.getValue();
        if (value.isTextual()) {
          spoil.add(() -> object.set(field, IntNode.valueOf(7)));
          undo.add(() -> object.set(field, value));
        }
        texts(value, spoil, undo);
      }
    } else if (node instanceof ArrayNode list) {
      for (int i = 0; i < list.size(); i++) {
        int at = i;
        JsonNode value = list.get(i);
        if (value.isTextual()) {
          spoil.add(() -> list.set(at, IntNode.valueOf(7)));
          undo.add(() -> list.set(at, value));
        }
        texts(value, spoil, undo);
      }
    }
  }
}
