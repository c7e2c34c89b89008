package broodtide.forms;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;

/** {@code true} or {@code false}. */
public record TruthForm() implements Form<Boolean> {
  @Override
  public @Nullable Boolean read(Node node, Reading in) {
    if (node instanceof Node.Word word && !word.shown().equals("null")) {
      return word.shown().equals("true");
    }
    in.fault(node, "expected true or false, without quotes");
    return null;
  }

  @Override
  public JsonNode write(Boolean value) {
    return BooleanNode.valueOf(value);
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    return SchemaParts.object().put("type", "boolean");
  }
}
