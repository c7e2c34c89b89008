package broodtide.forms;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Text that is not blank.
 *
 * @param longest characters at most
 * @param name whether it names something, and so may hold no {@link HiddenCharacters}; in other
 *     texts these are marked
 */
public record TextForm(int longest, boolean name) implements Form<String> {
  /** A name or a title. */
  public static final TextForm LINE = new TextForm(120, true);

  /** A sentence or a few. */
  public static final TextForm NOTE = new TextForm(2000, false);

  @Override
  public @Nullable String read(Node node, Reading in) {
    if (!(node instanceof Node.Text text)) {
      in.fault(node, "expected text in double quotes");
      return null;
    }
    String value = text.value();
    if (value.isBlank() || value.codePointCount(0, value.length()) > longest) {
      in.fault(node, "expected text of 1 to " + longest + " characters that is not blank");
      return null;
    }
    Optional<String> refusal = refusal(value);
    refusal.ifPresent(why -> in.fault(node, why));
    return refusal.isPresent() ? null : name ? value : HiddenCharacters.marked(value);
  }

  /** Why a text of this length cannot stand, for its characters. */
  public Optional<String> refusal(String text) {
    return (name ? HiddenCharacters.first(text) : Optional.<String>empty())
        .map(
            c ->
                "it holds the hidden character "
                    + c
                    + ", which no name may hold; type the name again");
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
