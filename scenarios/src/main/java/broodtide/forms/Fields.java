package broodtide.forms;

import java.util.Map;
import java.util.Optional;

/** The fields of one object as they were read. */
public final class Fields {
  private final Node.Obj node;
  private final Reading in;
  private final Map<String, Object> values;

  Fields(Node.Obj node, Reading in, Map<String, Object> values) {
    this.node = node;
    this.in = in;
    this.values = values;
  }

  /** A value that is needed could not be read; its fault is noted already. */
  static final class Unread extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private Unread(String name) {
      super(name, null, false, false);
    }
  }

  /** The value, or the fallback when the field is left out. */
  @SuppressWarnings("unchecked") // only the field's own form puts values under its name
  public <T> Optional<T> find(Field<T> field) {
    return given(field) ? Optional.ofNullable((T) values.get(field.name())) : field.fallback();
  }

  /**
   * The value or the fallback.
   *
   * @throws Unread when the value could not be read
   */
  public <T> T need(Field<T> field) {
    return find(field).orElseThrow(() -> new Unread(field.name()));
  }

  /** Whether the file holds the field, readable or not. */
  public boolean given(Field<?> field) {
    return node.members().containsKey(field.name());
  }

  /** Whether the file holds the field but its value cannot be used. */
  public boolean spoilt(Field<?> field) {
    return given(field) && !values.containsKey(field.name());
  }

  /** The field's value in the file, or the whole object when it is left out. */
  public Node at(Field<?> field) {
    return at(field.name());
  }

  Node at(String name) {
    return node.members().getOrDefault(name, node);
  }

  /** Notes a fault of a field's value. */
  public void fault(Field<?> field, String message) {
    in.fault(at(field), message);
  }

  /** The object. */
  public Node.Obj node() {
    return node;
  }

  /** The file. */
  public Reading in() {
    return in;
  }
}
