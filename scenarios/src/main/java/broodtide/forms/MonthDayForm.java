package broodtide.forms;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.time.MonthDay;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A day of any year, {@code 08-15}. */
public record MonthDayForm() implements Form<MonthDay> {
  public static final MonthDayForm DAY = new MonthDayForm();

  /** Days that come every year, for names of knots. */
  static final String EVERY_YEAR =
      "^(?!02-29)(0[13578]-(0[1-9]|[12][0-9]|3[01])|1[02]-(0[1-9]|[12][0-9]|3[01])"
          + "|(0[469]|11)-(0[1-9]|[12][0-9]|30)|02-(0[1-9]|1[0-9]|2[0-8]))$";

  private static final String ALLOWED = "expected a day of the year as \"08-15\": month-day";

  @Override
  public @Nullable MonthDay read(Node node, Reading in) {
    Optional<MonthDay> day =
        node instanceof Node.Text text ? parse(text.value()) : Optional.empty();
    if (day.isEmpty()) {
      in.fault(node, ALLOWED + ", and one that there is");
    }
    return day.orElse(null);
  }

  /** The day, if the text is one. */
  static Optional<MonthDay> parse(String text) {
    if (!text.matches("[0-9]{2}-[0-9]{2}")) {
      return Optional.empty();
    }
    try {
      int month = Integer.parseInt(text.substring(0, 2));
      return Optional.of(MonthDay.of(month, Integer.parseInt(text.substring(3))));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** The day as files write it. */
  static String text(MonthDay day) {
    return day.toString().substring(2);
  }

  @Override
  public JsonNode write(MonthDay value) {
    return JsonNodeFactory.instance.textNode(text(value));
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    return SchemaParts.object()
        .put("type", "string")
        .put("pattern", "^02-29$|" + EVERY_YEAR)
        .put("description", "month-day");
  }
}
