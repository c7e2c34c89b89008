package broodtide.forms;

import broodtide.measure.Measure;
import broodtide.measure.Measures;
import java.util.Optional;

/**
 * A field of an object in a file.
 *
 * @param name its name
 * @param form the form of its value
 * @param meaning what it means, as one would say it to a beekeeper
 * @param required whether it must be there
 * @param fallback the value that holds when it is left out
 */
public record Field<T>(
    String name, Form<T> form, String meaning, boolean required, Optional<T> fallback) {
  /** A field that must be there. */
  public static <T> Field<T> required(String name, Form<T> form, String meaning) {
    return new Field<>(name, form, meaning, true, Optional.empty());
  }

  /** A field that may be left out. */
  public static <T> Field<T> optional(String name, Form<T> form, String meaning) {
    return new Field<>(name, form, meaning, false, Optional.empty());
  }

  /** A field that has a value when it is left out. */
  public static <T> Field<T> optional(String name, Form<T> form, T fallback, String meaning) {
    return new Field<>(name, form, meaning, false, Optional.of(fallback));
  }

  /** A field with range, default and meaning from a record component's {@link Measure}. */
  public static Field<Double> of(Class<? extends Record> record, String component) {
    for (Measures.Line line : Measures.table(record)) {
      if (line.name().equals(component)) {
        Measure m = line.measure();
        return optional(
            component, NumberForm.of(m.min(), m.max(), m.unit()), m.value(), m.meaning());
      }
    }
    throw new IllegalArgumentException(record + " has no measure " + component);
  }
}
