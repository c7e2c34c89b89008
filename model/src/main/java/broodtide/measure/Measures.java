package broodtide.measure;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Reads the {@link Measure}s of a record: its defaults, its range checks and its table. */
public final class Measures {
  private Measures() {}

  /** One line of a parameter table. */
  public record Line(String record, String name, Measure measure) {}

  /**
   * Builds a record whose every component is a double with a {@link Measure}, from the defaults.
   *
   * @param type the record
   * @param overrides values by component name that replace the defaults
   * @param <R> the record
   * @return the record
   * @throws OutOfRange when an override lies outside its range
   * @throws IllegalArgumentException when an override names no component
   */
  public static <R extends Record> R build(Class<R> type, Map<String, Double> overrides) {
    RecordComponent[] parts = type.getRecordComponents();
    Class<?>[] types = new Class<?>[parts.length];
    Object[] values = new Object[parts.length];
    List<String> unknown = new ArrayList<>(overrides.keySet());
    for (int i = 0; i < parts.length; i++) {
      String name = parts[i].getName();
      types[i] = parts[i].getType();
      Double given = overrides.get(name);
      values[i] = given == null ? measure(parts[i]).value() : given;
      unknown.remove(name);
    }
    if (!unknown.isEmpty()) {
      throw new IllegalArgumentException(type.getSimpleName() + " has no field " + unknown.get(0));
    }
    try {
      return type.getDeclaredConstructor(types).newInstance(values);
    } catch (InvocationTargetException e) {
      if (e.getCause() instanceof OutOfRange bad) {
        throw bad;
      }
      throw new IllegalStateException("cannot build " + type.getName(), e);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("cannot build " + type.getName(), e);
    }
  }

  /**
   * Checks one component against its {@link Measure}; for use in a compact constructor.
   *
   * @param type the record under construction
   * @param name the component
   * @param value the value given
   * @throws OutOfRange when the value lies outside the range
   */
  public static void check(Class<? extends Record> type, String name, double value) {
    for (RecordComponent part : type.getRecordComponents()) {
      if (part.getName().equals(name)) {
        Measure m = measure(part);
        OutOfRange.check(name, value, m.min(), m.max(), m.unit());
        return;
      }
    }
    throw new IllegalStateException(type.getName() + " has no component " + name);
  }

  /**
   * Checks every component in order; for use in a compact constructor.
   *
   * @param type the record under construction
   * @param values the values in the order of the components
   * @throws OutOfRange for the first value outside its range
   */
  public static void checkAll(Class<? extends Record> type, double... values) {
    RecordComponent[] parts = type.getRecordComponents();
    if (parts.length != values.length) {
      throw new IllegalStateException(type.getName() + ": all components must be checked");
    }
    for (int i = 0; i < parts.length; i++) {
      Measure m = measure(parts[i]);
      OutOfRange.check(parts[i].getName(), values[i], m.min(), m.max(), m.unit());
    }
  }

  /**
   * {@return the parameter table of a record, in the order of its components}
   *
   * @param type the record; components without a {@link Measure} are passed over
   */
  public static List<Line> table(Class<? extends Record> type) {
    List<Line> lines = new ArrayList<>();
    for (RecordComponent part : type.getRecordComponents()) {
      Measure m = part.getAnnotation(Measure.class);
      if (m != null) {
        lines.add(new Line(type.getSimpleName(), part.getName(), m));
      }
    }
    return List.copyOf(lines);
  }

  private static Measure measure(RecordComponent part) {
    Measure m = part.getAnnotation(Measure.class);
    if (m == null) {
      throw new IllegalStateException(part + " has no @Measure");
    }
    return m;
  }
}
