package broodtide.forms;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;

/**
 * The form that a JSON value must have: reads it, writes it and describes itself, so that reader,
 * writer and schema cannot disagree.
 */
public interface Form<T> {
  /** The value, or null when it cannot be used, which is then among the faults. */
  @Nullable T read(Node node, Reading in);

  /** The value as JSON. */
  JsonNode write(T value);

  /** A JSON Schema that holds for the values this form reads. */
  ObjectNode schema(SchemaParts parts);
}
