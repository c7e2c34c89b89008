package broodtide.forms;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;

/**
 * A whole number in a range.
 *
 * @param min smallest, inclusive
 * @param max largest, inclusive
 * @param unit what is counted
 */
public record WholeForm(int min, int max, String unit) implements Form<Integer> {
  @Override
  public @Nullable Integer read(Node node, Reading in) {
    if (node instanceof Node.Num n
        && n.value() == Math.rint(n.value())
        && n.value() >= min
        && n.value() <= max) {
      return (int) n.value();
    }
    boolean quoted = node instanceof Node.Text;
    in.fault(
        node,
        "expected a whole number, "
            + min
            + " to "
            + max
            + " ("
            + unit
            + ")"
            + (quoted ? ", without quotes" : ""));
    return null;
  }

  @Override
  public JsonNode write(Integer value) {
    return JsonNodeFactory.instance.numberNode(value);
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    return SchemaParts.object()
        .put("type", "integer")
        .put("minimum", min)
        .put("maximum", max)
        .put("description", unit);
  }
}
