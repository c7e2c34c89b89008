package broodtide.page;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.study.TreatmentFile;
import broodtide.study.WashFile;
import broodtide.wash.Infestation;
import broodtide.wash.Interval;
import broodtide.wash.Wash;
import broodtide.words.Plain;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Looks at tables while they are typed, with the readers of the commands. */
final class TableCheck {
  /** Header line of a file, and line 1 of what is counted from 0. */
  private static final int FIRST_LINE = 2;

  private static final double LEVEL = 0.9;
  private static final Pattern EITHER_WAY =
      Pattern.compile("(\\d{1,2})([/-])(\\d{1,2})\\2(\\d{4})");

  private final LocalDate today;

  TableCheck(LocalDate today) {
    this.today = today;
  }

  /** {@return the washes of a table; empty when it has no row} */
  Optional<WashFile> washes(PageTable table) {
    if (table.rows().isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(WashFile.read(new StringReader(table.csv()), HiveFolder.WASHES, today));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** {@return the treatments of a table; empty when it has no row} */
  Optional<TreatmentFile> treatments(PageTable table) {
    if (table.rows().isEmpty()) {
      return Optional.empty();
    }
    byte[] bytes = table.csv().getBytes(StandardCharsets.UTF_8);
    try {
      return Optional.of(
          TreatmentFile.read(new ByteArrayInputStream(bytes), HiveFolder.TREATMENTS, today));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What is to be said of a table of washes: faults by row, notes, and what each count says. */
  ObjectNode ofWashes(PageTable table) {
    ObjectNode out = JsonNodeFactory.instance.objectNode();
    try {
      List<String> notes = washes(table).map(WashFile::notes).orElse(List.of());
      notes.forEach(out.putArray("notes")::add);
      out.putArray("faults");
    } catch (BadInput e) {
      faults(out, e);
    }
    ArrayNode said = out.putArray("said");
    for (int row = 0; row < table.rows().size(); row++) {
      said.add(count(table, row));
    }
    return out;
  }

  /** What is to be said of a table of treatments: faults by row, notes, and the days of each. */
  ObjectNode ofTreatments(PageTable table) {
    ObjectNode out = JsonNodeFactory.instance.objectNode();
    ArrayNode days = JsonNodeFactory.instance.arrayNode();
    try {
      Optional<TreatmentFile> file = treatments(table);
      file.map(TreatmentFile::notes).orElse(List.of()).forEach(out.putArray("notes")::add);
      out.putArray("faults");
      for (TreatmentFile.Given given :
          file.map(TreatmentFile::given).orElse(List.<TreatmentFile.Given>of())) {
        days.addObject()
            .put("colony", given.colony())
            .put("title", given.control().name())
            .put("from", given.control().from().toString())
            .put("to", given.control().to().toString());
      }
    } catch (BadInput e) {
      faults(out, e);
    }
    out.set("days", days);
    return out;
  }

  private static void faults(ObjectNode out, BadInput e) {
    out.putArray("notes");
    ArrayNode faults = out.putArray("faults");
    for (Fault fault : e.faults()) {
      ObjectNode one = faults.addObject();
      one.put("row", fault.line() - FIRST_LINE);
      one.put("column", fault.field());
      one.put("value", fault.value());
      one.put("message", fault.message());
      if (fault.field().equals("date") && fault.value() != null) {
        readings(one, fault.value());
      }
    }
    out.put("more", e.total() - e.faults().size());
  }

  /** Both readings of a date that has two. */
  private static void readings(ObjectNode out, String text) {
    Matcher date = EITHER_WAY.matcher(text);
    if (!date.matches()) {
      return;
    }
    int a = Integer.parseInt(date.group(1));
    int b = Integer.parseInt(date.group(3));
    int year = Integer.parseInt(date.group(4));
    ArrayNode readings = out.putArray("readings");
    day(year, b, a).ifPresent(d -> reading(readings, "day first", d));
    day(year, a, b).ifPresent(d -> reading(readings, "month first", d));
  }

  private static void reading(ArrayNode into, String order, LocalDate day) {
    into.addObject().put("order", order).put("date", day.toString()).put("words", Plain.day(day));
  }

  private static Optional<LocalDate> day(int year, int month, int day) {
    try {
      return Optional.of(LocalDate.of(year, month, day));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** What one count says by itself; empty while it cannot be read. */
  private String count(PageTable table, int row) {
    PageTable alone = alone(table, row);
    try {
      Optional<WashFile> file = washes(alone);
      if (file.isEmpty() || file.get().washes().isEmpty()) {
        return "";
      }
      Wash wash = file.get().washes().get(0);
      Infestation read = Infestation.of(wash);
      Interval range = read.exact(LEVEL);
      return Plain.level(read.perHundred())
          + " per 100, 90 % interval "
          + Plain.levels(range.low(), range.high());
    } catch (BadInput e) {
      return "";
    }
  }

  /** The row with a name and a day that can be read, for the interval needs neither. */
  private PageTable alone(PageTable table, int row) {
    List<String> cells = new ArrayList<>(table.rows().get(row));
    for (int i = 0; i < cells.size(); i++) {
      String column = table.columns().get(i);
      if (column.equals("date")) {
        cells.set(i, today.toString());
      } else if (column.equals("colony")) {
        cells.set(i, "hive");
      }
    }
    return new PageTable(table.columns(), List.of(cells));
  }
}
