package broodtide.forms;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;

/**
 * Text that is not blank.
 *
 * @param longest characters at most
 */
public record TextForm(int longest) implements Form<String> {
  /** A name or a title. */
  static final TextForm LINE = new TextForm(120);

  /** A sentence or a few. */
  static final TextForm NOTE = new TextForm(2000);

  @Override
  public @Nullable String read(Node node, Reading in) {
    if (!(node instanceof Node.Text text)) {
      in.fault(node, "allowed is text in double quotes");
      return null;
    }
    String value = text.value();
    if (value.isBlank() || value.codePointCount(0, value.length()) > longest) {
      in.fault(node, "allowed is text of 1 to " + longest + " characters that is not blank");
      return null;
    }
    return value;
  }

  @Override
  public JsonNode write(String value) {
    return JsonNodeFactory.instance.textNode(value);
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    return SchemaParts.object()
        .put("type", "string")
        .put("maxLength", longest)
        .put("pattern", "\\S");
  }
}
