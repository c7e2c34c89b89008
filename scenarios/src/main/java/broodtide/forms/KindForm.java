package broodtide.forms;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * An object in which the field named "kind" says which others there are.
 *
 * @param name name of the form, one word
 * @param kinds the kinds
 */
public record KindForm<T>(String name, List<Kind<T>> kinds) implements Form<T> {
  /**
   * One kind.
   *
   * @param word what stands in the field
   * @param fits whether a value is of this kind
   * @param form its fields, {@code kind} among them
   */
  public record Kind<T>(String word, Predicate<T> fits, ObjectForm<T> form) {}

  /**
   * A kind whose values are of one class.
   *
   * @param fields its fields; {@code kind} is put before them
   */
  public static <T, S extends T> Kind<T> kind(
      String word,
      Class<S> type,
      String meaning,
      List<Field<?>> fields,
      Function<Fields, S> make,
      BiConsumer<S, ObjectForm.Written> spell) {
    Field<String> kind = kindField(word);
    ObjectForm<T> form =
        new ObjectForm<>(
            word,
            meaning,
            Stream.concat(Stream.of(kind), fields.stream()).toList(),
            make::apply,
            (value, out) -> {
              out.put(kind, word);
              spell.accept(type.cast(value), out);
            });
    return new Kind<>(word, type::isInstance, form);
  }

  /** The field that names a kind. */
  public static Field<String> kindField(String word) {
    return Field.required("kind", ChoiceForm.only(word), "which kind this is");
  }

  @Override
  public @Nullable T read(Node node, Reading in) {
    if (!(node instanceof Node.Obj object)) {
      in.fault(node, "expected an object { ... } with a field \"kind\"");
      return null;
    }
    Node kind = object.members().get("kind");
    Optional<Kind<T>> known =
        kind instanceof Node.Text text
            ? kinds.stream().filter(k -> k.word().equals(text.value())).findFirst()
            : Optional.empty();
    if (known.isPresent()) {
      return known.get().form().read(node, in);
    }
    List<String> words = kinds.stream().map(Kind::word).toList();
    String allowed = "\"kind\" is one of " + String.join(", ", words);
    if (kind == null) {
      in.fault(node.spot(), null, "the field \"kind\" is missing; " + allowed);
    } else {
      in.fault(kind, allowed + Nearest.hint(kind.shown(), words));
    }
    return null;
  }

  @Override
  public JsonNode write(T value) {
    return kinds.stream()
        .filter(k -> k.fits().test(value))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no kind for " + value))
        .form()
        .write(value);
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    return parts.refer(
        name,
        () -> {
          ObjectNode out = SchemaParts.object();
          ArrayNode choices = out.putArray("oneOf");
          kinds.forEach(k -> choices.add(k.form().schema(parts)));
          return out;
        });
  }
}
