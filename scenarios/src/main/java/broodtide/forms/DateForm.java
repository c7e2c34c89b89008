package broodtide.forms;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import org.jspecify.annotations.Nullable;

/** A calendar date, {@code 2027-08-15}, from 1900 to 2199. */
public record DateForm() implements Form<LocalDate> {
  public static final DateForm DATE = new DateForm();

  @Override
  public @Nullable LocalDate read(Node node, Reading in) {
    if (!(node instanceof Node.Text text) || !text.value().matches("\\d{4}-\\d{2}-\\d{2}")) {
      in.fault(node, "expected a date as \"2027-08-15\": year, month, day");
      return null;
    }
    int year = Integer.parseInt(text.value().substring(0, 4));
    int month = Integer.parseInt(text.value().substring(5, 7));
    int day = Integer.parseInt(text.value().substring(8, 10));
    if (year < 1900 || year > 2199) {
      in.fault(node, "expected the years 1900 to 2199");
      return null;
    }
    try {
      return LocalDate.of(year, month, day);
    } catch (DateTimeException e) {
      in.fault(node, noSuchDay(year, month));
      return null;
    }
  }

  private static String noSuchDay(int year, int month) {
    if (month < 1 || month > 12) {
      return "there is no month " + month + "; the order is year-month-day";
    }
    YearMonth held = YearMonth.of(year, month);
    return "there is no such day; " + held + " has the days 01 to " + held.lengthOfMonth();
  }

  @Override
  public JsonNode write(LocalDate value) {
    return JsonNodeFactory.instance.textNode(value.toString());
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    return SchemaParts.object()
        .put("type", "string")
        .put("format", "date")
        .put("pattern", "^(19|20|21)[0-9]{2}-[0-9]{2}-[0-9]{2}$")
        .put("description", "year-month-day");
  }
}
