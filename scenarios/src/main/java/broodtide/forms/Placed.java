package broodtide.forms;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;

/**
 * A value with its place, for checks across fields.
 *
 * @param node where it stands
 * @param value the value
 */
public record Placed<T>(Node node, T value) {
  /** The form of a value that keeps its place. */
  record Keeping<T>(Form<T> form) implements Form<Placed<T>> {
    @Override
    public @Nullable Placed<T> read(Node node, Reading in) {
      T value = form.read(node, in);
      return value == null ? null : new Placed<>(node, value);
    }

    @Override
    public JsonNode write(Placed<T> value) {
      return form.write(value.value());
    }

    @Override
    public ObjectNode schema(SchemaParts parts) {
      return form.schema(parts);
    }
  }

  /** A value made in code, which stands nowhere. */
  public static <T> Placed<T> nowhere(T value) {
    return new Placed<>(new Node.Word(new Node.Spot("$", 0, 0), "null"), value);
  }

  /** The place of a member, or of the whole value when it has none of that name. */
  Node at(String... names) {
    if (node instanceof Node.Obj object) {
      for (String name : names) {
        Node member = object.members().get(name);
        if (member != null) {
          return member;
        }
      }
    }
    return node;
  }
}
