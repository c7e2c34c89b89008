package broodtide.forms;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * One of a few words.
 *
 * @param words the values by word, in the order in which they are listed
 */
public record ChoiceForm<T>(Map<String, T> words) implements Form<T> {
  /** A choice among values that each have a word. */
  public static <T> ChoiceForm<T> of(List<T> values, Function<T, String> word) {
    Map<String, T> words = new LinkedHashMap<>();
    values.forEach(v -> words.put(word.apply(v), v));
    return new ChoiceForm<>(words);
  }

  /** A word that must stand as it is. */
  static ChoiceForm<String> only(String word) {
    return of(List.of(word), w -> w);
  }

  @Override
  public @Nullable T read(Node node, Reading in) {
    T value = node instanceof Node.Text text ? words.get(text.value()) : null;
    if (value == null) {
      String hint = node instanceof Node.Text t ? Nearest.hint(t.value(), words.keySet()) : "";
      String all = String.join("\", \"", words.keySet());
      in.fault(node, "expected " + (words.size() > 1 ? "one of " : "") + "\"" + all + "\"" + hint);
    }
    return value;
  }

  @Override
  public JsonNode write(T value) {
    for (Map.Entry<String, T> each : words.entrySet()) {
      if (each.getValue().equals(value)) {
        return JsonNodeFactory.instance.textNode(each.getKey());
      }
    }
    throw new IllegalArgumentException(value + " has no word");
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    ObjectNode out = SchemaParts.object().put("type", "string");
    words.keySet().forEach(out.withArray("enum")::add);
    return out;
  }
}
