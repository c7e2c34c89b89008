package broodtide.forms;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RevisedJsonTest {
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(JsonReadFeature.ALLOW_JAVA_COMMENTS).build();

  private static RevisedJson revised(String text, String was, String next) throws Exception {
    return RevisedJson.of(text, JSON.readTree(was), JSON.readTree(next), true);
  }

  @Test
  void whatDoesNotChangeStaysToTheLetter() throws Exception {
    String text = "{ // one\n  \"a\": 1, \"b\" :2 /* two */\n}";
    String as = "{\"a\": 1, \"b\": 2, \"usual\": 3}";
    assertThat(revised(text, as, as)).isEqualTo(new RevisedJson(text, List.of()));
    assertThat(revised(text, as, "{\"a\": 1, \"b\": 5, \"usual\": 3}").text())
        .isEqualTo("{ // one\n  \"a\": 1, \"b\" :5 /* two */\n}");
  }

  @Test
  void whatIsNewComesLastAndWhatGoesTakesItsLineAlong() throws Exception {
    String text = "{\n  \"a\": 1, // one\n  \"b\": 2\n}\n";
    assertThat(revised(text, "{\"a\": 1, \"b\": 2}", "{\"a\": 1, \"c\": [3]}").text())
        .isEqualTo(
            "{\n  \"a\": 1, \n  \"c\": [3]// one\n}\n"
                .replace("\n  \"c\": [3]// one", " // one")
                .replace("1,  // one", "1,\n  \"c\": [3] // one"));
  }

  @Test
  void aRemarkWithinWhatGoesIsNamed() throws Exception {
    String text = "{\"a\": [1, /* why */ 2], \"b\": 2}";
    RevisedJson revised = revised(text, "{\"a\": [1, 2], \"b\": 2}", "{\"b\": 2}");
    assertThat(revised.lost()).containsExactly("/* why */");
    assertThat(JSON.readTree(revised.text())).isEqualTo(JSON.readTree("{\"b\": 2}"));
  }

  /** Whatever changes, the text means what was asked for, and each remark stands or is named. */
  @Test
  void anyChangeOfAnyText() throws Exception {
    for (int seed = 0; seed < 1000; seed++) {
      Random random = new Random(seed);
      JsonNode was = node(random, 3);
      JsonNode next = changed(random, was);
      String text = remarked(random, NeatJson.text(was));
      assertThat(JSON.readTree(text)).isEqualTo(was);
      for (boolean deep : new boolean[] {true, false}) {
        RevisedJson revised = RevisedJson.of(text, was, next, deep);
        assertThat(JSON.readTree(revised.text())).as("seed %d: %s", seed, text).isEqualTo(next);
        assertThat(RevisedJson.commentsOf(revised.text()).size() + revised.lost().size())
            .as("seed %d: %s", seed, text)
            .isEqualTo(RevisedJson.commentsOf(text).size());
      }
    }
  }

  private static JsonNode node(Random random, int depth) {
    JsonNodeFactory make = JsonNodeFactory.instance;
    int kind = depth == 3 ? 0 : random.nextInt(depth > 0 ? 5 : 3);
    switch (kind) {
      case 0, 3 -> {
        if (depth == 0) {
          return make.numberNode(random.nextInt(1000) / 8.0 - 20);
        }
        ObjectNode out = make.objectNode();
        for (int i = random.nextInt(5); i > 0; i--) {
          out.set("name" + random.nextInt(8), node(random, depth - 1));
        }
        return out;
      }
      case 1 -> {
        return make.textNode(
            List.of("", "// no remark", "a \"quote\"", "/* */").get(random.nextInt(4)));
      }
      case 2 -> {
        return random.nextBoolean()
            ? make.booleanNode(random.nextBoolean())
            : make.numberNode(random.nextInt(99));
      }
      default -> {
        ArrayNode out = make.arrayNode();
        for (int i = random.nextInt(4); i > 0; i--) {
          out.add(node(random, depth - 1));
        }
        return out;
      }
    }
  }

  private static JsonNode changed(Random random, JsonNode was) {
    if (was.isObject()) {
      ObjectNode out = was.deepCopy();
      for (int i = 0; i < 8; i++) {
        String name = "name" + i;
        int what = random.nextInt(8);
        if (what == 0) {
          out.remove(name);
        } else if (what == 1) {
          out.set(name, node(random, 1));
        } else if (what < 5 && out.has(name)) {
          out.set(name, changed(random, out.get(name)));
        }
      }
      return out;
    }
    if (was.isArray()) {
      ArrayNode out = was.deepCopy();
      int what = random.nextInt(4);
      if (what == 0 && !out.isEmpty()) {
        out.remove(random.nextInt(out.size()));
      } else if (what == 1) {
        out.insert(random.nextInt(out.size() + 1), node(random, 1));
      } else if (what == 2 && !out.isEmpty()) {
        int at = random.nextInt(out.size());
        out.set(at, changed(random, out.get(at)));
      }
      return out;
    }
    return random.nextBoolean() ? was : node(random, 0);
  }

  /** Remarks and blanks where they may stand: after brackets and commas outside texts. */
  private static String remarked(Random random, String text) {
    StringBuilder out = new StringBuilder();
    boolean within = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '\\' && within) {
        out.append(c).append(text.charAt(++i));
        continue;
      }
      within = (c == '"') != within;
      boolean closes = !within && (c == ']' || c == '}' || c == ',');
      if (closes && random.nextInt(6) == 0) {
        out.append(random.nextBoolean() ? " // it, was\n" : " /* so */ ");
      }
      out.append(c);
      if (!within && "{[,".indexOf(c) >= 0 && random.nextInt(6) == 0) {
        out.append(random.nextBoolean() ? " // it is\n" : "/* why, } */");
      }
    }
    return out.toString();
  }
}
