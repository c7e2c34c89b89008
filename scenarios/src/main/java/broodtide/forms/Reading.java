package broodtide.forms;

import broodtide.forms.Node.Spot;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** One file while it is read: where it lies and what was found wrong so far. */
public final class Reading {
  private final Source source;
  private final Faults faults;

  private Reading(Source source, Faults faults) {
    this.source = source;
    this.faults = faults;
  }

  /**
   * Reads a whole file.
   *
   * @throws BadInput with every fault there is
   */
  static <T> T whole(Source source, Form<T> form) {
    Faults faults = new Faults(source.name());
    Node root = JsonTree.read(source.text(), faults);
    T value = root == null ? null : form.read(root, new Reading(source, faults));
    faults.throwIfAny();
    if (value == null) {
      throw new IllegalStateException(source.name() + " was refused without a fault");
    }
    return value;
  }

  /** The file. */
  Source source() {
    return source;
  }

  /** Notes a value that cannot be used. */
  void fault(Node node, String message) {
    fault(node.spot(), node.shown(), message);
  }

  /** Notes a fault at a place. */
  void fault(Spot spot, @Nullable String value, String message) {
    faults.add(spot.line(), spot.column(), spot.path(), value, message);
  }

  /** Looks up what a value refers to; what is wrong there is noted as a fault of the value. */
  <T> @Nullable T lookUp(Node reference, Supplier<T> look) {
    try {
      return look.get();
    } catch (BadInput bad) {
      Fault first = bad.faults().get(0);
      boolean named = first.line() == 0 && first.value() != null;
      fault(reference, named ? first.message() : "mend that file first: " + bad.getMessage());
      return null;
    }
  }
}
