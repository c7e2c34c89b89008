package broodtide.table;

import broodtide.forms.Faults;
import broodtide.study.WashFile;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The column {@code date} of a table of what has happened: days up to today. */
public final class PastDays {
  private final CellReader cells;
  private final Faults faults;
  private final LocalDate today;
  private final String mend;
  private final DateColumn column;

  /**
   * @param columns names of the columns
   * @param mend what to do about a blank cell
   */
  PastDays(List<String> columns, CellReader cells, Faults faults, LocalDate today, String mend) {
    this.cells = cells;
    this.faults = faults;
    this.today = today;
    this.mend = mend;
    this.column = new DateColumn("date", columns.indexOf("date") + 1);
  }

  /** First reading of a row. */
  void look(int line, String[] row) {
    column.see(line, cells.text(row, "date"));
  }

  /** Between the readings. */
  void judge() {
    column.judge(faults);
  }

  /** Second reading: the day, or null when there is none. */
  @Nullable LocalDate read(int line, String[] row) {
    String text = cells.required(line, row, "date", mend);
    LocalDate date = text.isEmpty() ? null : column.read(line, text, faults);
    if (date == null) {
      return null;
    }
    if (date.isAfter(today)) {
      cells.fault(line, row, "date", date + " is after today, " + today + "; correct the date");
    } else if (date.isBefore(WashFile.EARLIEST)) {
      cells.fault(
          line, row, "date", date + " is before " + WashFile.EARLIEST + "; correct the year");
    }
    return date;
  }

  /** What the user should know of how the dates were read. */
  List<String> notes() {
    return column.notes();
  }
}
