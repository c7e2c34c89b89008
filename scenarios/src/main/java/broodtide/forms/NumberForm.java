package broodtide.forms;

import broodtide.measure.OutOfRange;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.DecimalNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A number in a range.
 *
 * @param min smallest, inclusive
 * @param max largest, inclusive
 * @param unit unit, {@code 1} for a pure number
 */
public record NumberForm(double min, double max, String unit) implements Form<Double> {
  public static NumberForm of(double min, double max, String unit) {
    return new NumberForm(min, max, unit);
  }

  /** A share, 0 to a largest value. */
  public static NumberForm share(double max) {
    return of(0, max, "1");
  }

  @Override
  public @Nullable Double read(Node node, Reading in) {
    String allowed = "a number, " + OutOfRange.range(min, max, unit);
    if (!(node instanceof Node.Num number)) {
      boolean quoted = node instanceof Node.Text;
      in.fault(node, "expected " + allowed + (quoted ? ", without quotes" : ""));
      return null;
    }
    if (!(number.value() >= min && number.value() <= max)) {
      in.fault(node, "expected " + allowed);
      return null;
    }
    return number.value();
  }

  /** The number as files and messages write it. */
  public static String plain(double value) {
    return of(value, value, "1").write(value).asText();
  }

  @Override
  public JsonNode write(Double value) {
    BigDecimal shortest = new BigDecimal(Double.toString(value)).stripTrailingZeros();
    return DecimalNode.valueOf(shortest.scale() < 0 ? shortest.setScale(0) : shortest);
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    ObjectNode out = SchemaParts.object().put("type", "number");
    out.set("minimum", write(min));
    out.set("maximum", write(max));
    return unit.equals("1") ? out : out.put("description", unit);
  }
}
