package broodtide.forms;

import broodtide.season.YearSpan;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.MonthDay;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A stretch of the year, {@code ["05-01", "08-20"]}, both days included. */
public record SpanForm() implements Form<YearSpan> {
  private static final ListForm<MonthDay> ENDS = new ListForm<>(MonthDayForm.DAY, 2, 2);

  @Override
  public @Nullable YearSpan read(Node node, Reading in) {
    List<MonthDay> ends = ENDS.read(node, in);
    return ends == null ? null : new YearSpan(ends.get(0), ends.get(1));
  }

  @Override
  public JsonNode write(YearSpan value) {
    return ENDS.write(List.of(value.from(), value.to()));
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    return ENDS.schema(parts).put("description", "first day, last day");
  }
}
