package broodtide.forms;

import broodtide.measure.OutOfRange;
import broodtide.measure.RefusedException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * An object with known fields.
 *
 * @param name name of the form, one word
 * @param meaning what such an object is
 * @param fields its fields, in the order in which they are written
 * @param make builds the value; called even when fields are faulty, so that checks across the
 *     fields that could be read still speak; {@link OutOfRange} and other refusals become faults
 * @param spell writes the value's fields
 * @param replaced what to say to fields of earlier versions, by name
 */
public record ObjectForm<T>(
    String name,
    String meaning,
    List<Field<?>> fields,
    Function<Fields, @Nullable T> make,
    BiConsumer<T, Written> spell,
    Map<String, String> replaced)
    implements Form<T> {
  /** An object none of whose fields was ever called otherwise. */
  public ObjectForm(
      String name,
      String meaning,
      List<Field<?>> fields,
      Function<Fields, @Nullable T> make,
      BiConsumer<T, Written> spell) {
    this(name, meaning, fields, make, spell, Map.of());
  }

  /**
   * {@return the same form that answers fields of earlier versions with what took their place}
   *
   * @param answers what to say, by the field's former name
   */
  public ObjectForm<T> replaced(Map<String, String> answers) {
    return new ObjectForm<>(name, meaning, fields, make, spell, answers);
  }

  /** The fields of an object that is being written. */
  public static final class Written {
    private final ObjectNode out = SchemaParts.object();

    /** Writes a field, unless it has its fallback value. */
    public <V> void put(Field<V> field, V value) {
      if (field.fallback().isEmpty() || !field.fallback().get().equals(value)) {
        out.set(field.name(), field.form().write(value));
      }
    }
  }

  @Override
  public @Nullable T read(Node node, Reading in) {
    if (!(node instanceof Node.Obj object)) {
      in.fault(node, "expected an object { ... }: " + meaning);
      return null;
    }
    boolean whole = namesAreRight(object, in);
    Map<String, Object> values = new HashMap<>();
    for (Field<?> field : fields) {
      Node given = object.members().get(field.name());
      if (given != null) {
        Object value = field.form().read(given, in);
        if (value == null) {
          whole = false;
        } else {
          values.put(field.name(), value);
        }
      }
    }
    T made = made(new Fields(object, in, values));
    return whole ? made : null;
  }

  /**
   * A field that is missing while one misspelt like it, or its former name, is there makes one
   * fault, not two.
   */
  private boolean namesAreRight(Node.Obj object, Reading in) {
    List<String> known = fields.stream().map(Field::name).toList();
    Set<String> meant = new HashSet<>();
    boolean right = true;
    for (String given : object.members().keySet()) {
      if (!known.contains(given)) {
        right = false;
        String answer = replaced.get(given);
        if (answer == null) {
          Nearest.to(given, known).ifPresent(meant::add);
        } else {
          known.stream().filter(name -> answer.contains('"' + name + '"')).forEach(meant::add);
        }
        String message =
            answer != null
                ? answer
                : "there is no such field; expected one of "
                    + String.join(", ", known)
                    + Nearest.hint(given, known);
        in.fault(object.keys().getOrDefault(given, object.spot()), null, message);
      }
    }
    for (Field<?> field : fields) {
      if (field.required() && !object.members().containsKey(field.name())) {
        right = false;
        if (!meant.contains(field.name())) {
          String missing = "the field \"" + field.name() + "\" is missing: " + field.meaning();
          in.fault(object.spot(), null, missing);
        }
      }
    }
    return right;
  }

  private @Nullable T made(Fields read) {
    try {
      return make.apply(read);
    } catch (Fields.Unread e) {
      return null;
    } catch (OutOfRange e) {
      Node at = read.at(e.field());
      boolean plain = !(at instanceof Node.Arr || at instanceof Node.Obj);
      String message = plain ? "expected " + e.allowed() : e.reason();
      read.in().fault(at.spot(), plain ? at.shown() : null, message);
    } catch (RefusedException e) {
      read.in().fault(read.node().spot(), null, e.reason());
    }
    return null;
  }

  @Override
  public JsonNode write(T value) {
    Written written = new Written();
    spell.accept(value, written);
    return written.out;
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    return parts.refer(name, () -> body(parts));
  }

  /** The schema itself rather than a reference to it. */
  public ObjectNode body(SchemaParts parts) {
    ObjectNode out = SchemaParts.object();
    out.put("type", "object").put("description", meaning);
    ObjectNode properties = out.putObject("properties");
    ArrayNode required = SchemaParts.object().arrayNode();
    for (Field<?> field : fields) {
      properties.set(field.name(), described(field, parts));
      if (field.required()) {
        required.add(field.name());
      }
    }
    if (!required.isEmpty()) {
      out.set("required", required);
    }
    return out.put("additionalProperties", false);
  }

  private static <V> ObjectNode described(Field<V> field, SchemaParts parts) {
    ObjectNode out = field.form().schema(parts);
    String unit = out.path("description").asText();
    out.put("description", unit.isEmpty() ? field.meaning() : field.meaning() + " (" + unit + ")");
    field.fallback().ifPresent(value -> out.set("default", field.form().write(value)));
    return out;
  }
}
