package broodtide.forms;

import broodtide.season.Curve;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A curve over the year as its knots, <code>{"03-10": 0, "06-15": 1700}</code>. Knots are put into
 * the order of the year; a file may begin with any.
 *
 * @param value form of the values
 */
public record CurveForm(NumberForm value) implements Form<Curve> {
  public static CurveForm of(double min, double max, String unit) {
    return new CurveForm(NumberForm.of(min, max, unit));
  }

  @Override
  public @Nullable Curve read(Node node, Reading in) {
    if (!(node instanceof Node.Obj object) || object.members().isEmpty()) {
      in.fault(node, "expected knots of the year, at least one: {\"06-15\": value}");
      return null;
    }
    List<Curve.Knot> knots = new ArrayList<>();
    object.members().forEach((day, at) -> knot(object, day, at, in).ifPresent(knots::add));
    if (knots.size() < object.members().size()) {
      return null;
    }
    knots.sort(Comparator.comparing(Curve.Knot::day));
    return Curve.through(knots);
  }

  private Optional<Curve.Knot> knot(Node.Obj object, String name, Node node, Reading in) {
    Double height = value.read(node, in);
    Optional<MonthDay> day = MonthDayForm.parse(name).filter(d -> d.isValidYear(2001));
    if (day.isEmpty()) {
      in.fault(
          object.keys().getOrDefault(name, object.spot()),
          name,
          "expected a day that every year has, as \"08-15\": month-day");
    }
    return height == null ? Optional.empty() : day.map(d -> new Curve.Knot(d, height));
  }

  @Override
  public JsonNode write(Curve curve) {
    ObjectNode out = SchemaParts.object();
    for (Curve.Knot knot : curve.knots()) {
      out.set(MonthDayForm.text(knot.day()), value.write(knot.value()));
    }
    return out;
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    ObjectNode out = SchemaParts.object().put("type", "object").put("minProperties", 1);
    String unit = value.unit().equals("1") ? "" : value.unit() + "; ";
    out.put("description", unit + "straight lines between knots, month-day: value");
    out.putObject("propertyNames").put("pattern", MonthDayForm.EVERY_YEAR);
    out.set("additionalProperties", value.schema(parts));
    return out;
  }
}
