package broodtide.forms;

import broodtide.measure.Measures;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Rates that differ from their defaults, by the names of a record's components. Every field's range
 * comes from its {@link broodtide.measure.Measure}.
 */
public final class RatesForm {
  private RatesForm() {}

  public static ObjectForm<Map<String, Double>> of(
      String name, Class<? extends Record> record, String meaning) {
    List<Field<Double>> rates =
        Measures.table(record).stream().map(line -> Field.of(record, line.name())).toList();
    return new ObjectForm<>(
        name,
        meaning,
        List.copyOf(rates),
        in -> given(in, rates),
        (v, out) -> spell(v, rates, out));
  }

  private static Map<String, Double> given(Fields in, List<Field<Double>> rates) {
    Map<String, Double> values = new TreeMap<>();
    for (Field<Double> rate : rates) {
      if (in.given(rate)) {
        values.put(rate.name(), in.need(rate));
      }
    }
    return values;
  }

  private static void spell(
      Map<String, Double> values, List<Field<Double>> rates, ObjectForm.Written out) {
    for (Field<Double> rate : rates) {
      Double value = values.get(rate.name());
      if (value != null) {
        out.put(rate, value);
      }
    }
  }
}
