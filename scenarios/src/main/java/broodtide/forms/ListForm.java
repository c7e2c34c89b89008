package broodtide.forms;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A list of values of one form.
 *
 * @param item form of each value
 * @param least values at least
 * @param most values at most
 */
public record ListForm<T>(Form<T> item, int least, int most) implements Form<List<T>> {
  @Override
  public @Nullable List<T> read(Node node, Reading in) {
    if (!(node instanceof Node.Arr list)) {
      in.fault(node, "expected a list [ ... ]");
      return null;
    }
    int size = list.items().size();
    if (size < least || size > most) {
      in.fault(
          list.spot(),
          null,
          "a list of " + least + " to " + most + " is allowed, this has " + size);
      return null;
    }
    List<T> values = new ArrayList<>();
    for (Node each : list.items()) {
      T value = item.read(each, in);
      if (value != null) {
        values.add(value);
      }
    }
    return values.size() == size ? List.copyOf(values) : null;
  }

  @Override
  public JsonNode write(List<T> values) {
    ArrayNode out = SchemaParts.object().arrayNode();
    values.forEach(v -> out.add(item.write(v)));
    return out;
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    ObjectNode out = SchemaParts.object().put("type", "array");
    out.set("items", item.schema(parts));
    if (least > 0) {
      out.put("minItems", least);
    }
    return out.put("maxItems", most);
  }
}
