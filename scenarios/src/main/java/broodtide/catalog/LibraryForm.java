package broodtide.catalog;

import broodtide.forms.Form;
import broodtide.forms.Node;
import broodtide.forms.Reading;
import broodtide.forms.SchemaParts;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;

/**
 * The name of a file of the library, or the path of a file of the user's own, read at once.
 *
 * @param shelf where names are looked up
 * @param form form of the file
 */
public record LibraryForm<T>(Shelf<T> shelf, Form<T> form) implements Form<T> {
  @Override
  public @Nullable T read(Node node, Reading in) {
    if (!(node instanceof Node.Text text)) {
      in.fault(node, "expected " + allowed() + ", in double quotes");
      return null;
    }
    return in.lookUp(node, () -> Reading.whole(shelf.find(text.value(), in.source()), form));
  }

  @Override
  public JsonNode write(T value) {
    throw new IllegalArgumentException("a value does not know the name of its file");
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    return SchemaParts.object().put("type", "string").put("minLength", 1);
  }

  private static String allowed() {
    return "a name of the library or a path ending in .json";
  }
}
