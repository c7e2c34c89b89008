package broodtide.forms;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;

/** Parts of a schema that several places refer to by name. */
public final class SchemaParts {
  private final Map<String, ObjectNode> parts = new TreeMap<>();

  /** A reference to a part, which is made when it is first asked for. */
  ObjectNode refer(String name, Supplier<ObjectNode> make) {
    if (!parts.containsKey(name)) {
      ObjectNode place = object();
      parts.put(name, place);
      place.setAll(make.get());
    }
    return object().put("$ref", "#/$defs/" + name);
  }

  /** All parts by name. */
  ObjectNode all() {
    ObjectNode out = object();
    parts.forEach(out::set);
    return out;
  }

  static ObjectNode object() {
    return JsonNodeFactory.instance.objectNode();
  }
}
