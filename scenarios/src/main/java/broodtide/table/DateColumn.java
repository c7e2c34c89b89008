package broodtide.table;

import broodtide.forms.Fault;
import broodtide.forms.Faults;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The dates of one column. ISO dates, year-first dates and a spreadsheet's day numbers say what
 * they mean; {@code 03/04/2025} does not, so the whole column is looked through first, and it is
 * read only when some row in it leaves one reading.
 */
final class DateColumn {
  private static final String ALLOWED = "expected a date such as 2025-06-15";
  private static final Pattern TIME =
      Pattern.compile("([01]?\\d|2[0-3]):[0-5]\\d(:[0-5]\\d([.]\\d{1,9})?)?Z?");
  private static final LocalDate SERIAL_ZERO = LocalDate.of(1899, 12, 30);

  private enum Kind {
    SURE,
    SERIAL,
    DOTTED,
    SLASHED,
    BAD
  }

  /** A cell taken apart; for SLASHED and DOTTED a and b stand in the order written. */
  private record Cell(Kind kind, int a, int b, int year, String why) {}

  private final String field;
  private final int column;
  private @Nullable Fault dayFirst;
  private @Nullable Fault monthFirst;
  private @Nullable Fault unclear;
  private int unclearRows;
  private boolean bothOrders;
  private boolean serials;
  private boolean dots;

  /**
   * @param field the column's name
   * @param column its place from 1
   */
  DateColumn(String field, int column) {
    this.field = field;
    this.column = column;
  }

  /** First reading: looks at one cell. */
  void see(int line, String text) {
    Cell cell = cell(text);
    serials |= cell.kind == Kind.SERIAL;
    dots |= cell.kind == Kind.DOTTED;
    if (cell.kind != Kind.SLASHED || cell.a == cell.b) {
      return;
    }
    Fault here = new Fault("", line, column, field, text, "");
    if (cell.a > 12 && cell.b <= 12) {
      dayFirst = dayFirst == null ? here : dayFirst;
    } else if (cell.b > 12 && cell.a <= 12) {
      monthFirst = monthFirst == null ? here : monthFirst;
    } else if (cell.a <= 12) {
      unclear = unclear == null ? here : unclear;
      unclearRows++;
    }
  }

  /** After the first reading: reports a column that has no reading or two. */
  void judge(Faults faults) {
    if (dayFirst != null && monthFirst != null) {
      bothOrders = true;
      Fault later = dayFirst.line() > monthFirst.line() ? dayFirst : monthFirst;
      Fault earlier = later == dayFirst ? monthFirst : dayFirst;
      faults.add(
          later.line(),
          column,
          field,
          later.value(),
          "day and month are in the opposite order to "
              + Fault.quoted(String.valueOf(earlier.value()))
              + " in line "
              + earlier.line()
              + "; write all dates as 2025-06-15");
    } else if (unclear != null && dayFirst == null && monthFirst == null) {
      Cell cell = cell(String.valueOf(unclear.value()));
      String rows = unclearRows == 1 ? "" : " (" + (unclearRows - 1) + " more rows alike)";
      faults.add(
          unclear.line(),
          column,
          field,
          unclear.value(),
          String.format(
              Locale.ROOT,
              "it may be %04d-%02d-%02d or %04d-%02d-%02d, and no row of the file shows which%s;"
                  + " write dates as 2025-06-15",
              cell.year,
              cell.b,
              cell.a,
              cell.year,
              cell.a,
              cell.b,
              rows));
    }
  }

  /** What the user should know of how the dates were read. */
  List<String> notes() {
    List<String> notes = new ArrayList<>();
    if (unclear != null && (dayFirst == null) != (monthFirst == null)) {
      Fault shows = dayFirst != null ? dayFirst : monthFirst;
      notes.add(
          String.format(
              Locale.ROOT,
              "Dates such as %s are read as %s, as line %d shows.",
              unclear.value(),
              dayFirst != null ? "day/month/year" : "month/day/year",
              shows == null ? 0 : shows.line()));
    }
    if (dots) {
      notes.add("Dates with dots are read as day.month.year.");
    }
    if (serials) {
      notes.add(
          "Day numbers in column " + field + " are read as a spreadsheet's: 46000 is 2025-12-09.");
    }
    return notes;
  }

  /**
   * Second reading.
   *
   * @return the date, or null when there is none, which is reported here or was by {@link #judge}
   */
  @Nullable LocalDate read(int line, String text, Faults faults) {
    Cell cell = cell(text);
    try {
      switch (cell.kind) {
        case SURE:
          return LocalDate.of(cell.year, cell.a, cell.b);
        case SERIAL:
          return SERIAL_ZERO.plusDays(cell.a);
        case DOTTED:
          return LocalDate.of(cell.year, cell.b, cell.a);
        case SLASHED:
          if (bothOrders && cell.a <= 12 && cell.b <= 12 && cell.a != cell.b) {
            return null;
          }
          if (cell.a > 12 || (dayFirst != null && cell.b <= 12)) {
            return LocalDate.of(cell.year, cell.b, cell.a);
          }
          if (cell.b > 12 || monthFirst != null || cell.a == cell.b) {
            return LocalDate.of(cell.year, cell.a, cell.b);
          }
          return null;
        default:
          faults.add(line, column, field, text, cell.why);
          return null;
      }
    } catch (DateTimeException e) {
      faults.add(line, column, field, text, "there is no such day; " + ALLOWED);
      return null;
    }
  }

  private static Cell cell(String text) {
    int cut = timeAt(text);
    if (cut < text.length() && !TIME.matcher(text).region(cut + 1, text.length()).matches()) {
      return bad(
          Fault.quoted(text.substring(cut + 1))
              + " is not a time of day; write the date alone, such as 2025-06-15");
    }
    String day = text.substring(0, cut);
    int[] part = new int[3];
    int[] digits = new int[3];
    int at = 0;
    char separator = 0;
    for (int i = 0; i < day.length(); i++) {
      char c = day.charAt(i);
      if (c >= '0' && c <= '9') {
        if (++digits[at] > 8) {
          return bad(ALLOWED);
        }
        part[at] = 10 * part[at] + (c - '0');
      } else if ((c == '-' || c == '/' || c == '.')
          && at < 2
          && digits[at] > 0
          && (separator == 0 || separator == c)) {
        separator = c;
        at++;
      } else {
        return bad(ALLOWED);
      }
    }
    return at == 0 ? number(part[0], digits[0]) : parts(part, digits, separator);
  }

  private static Cell number(int number, int digits) {
    if (digits == 8) {
      return new Cell(Kind.SURE, number / 100 % 100, number % 100, number / 10_000, "");
    }
    // 18264 is 1950-01-01 and 73050 is 2099-12-31
    if (digits == 5 && number >= 18_264 && number <= 73_050) {
      return new Cell(Kind.SERIAL, number, 0, 0, "");
    }
    return bad(ALLOWED);
  }

  private static Cell parts(int[] part, int[] digits, char separator) {
    if (digits[0] == 4 && digits[1] <= 2 && digits[2] > 0 && digits[2] <= 2) {
      return new Cell(Kind.SURE, part[1], part[2], part[0], "");
    }
    if (digits[0] > 2 || digits[1] > 2) {
      return bad(ALLOWED);
    }
    if (digits[2] == 4) {
      Kind kind = separator == '.' ? Kind.DOTTED : Kind.SLASHED;
      return new Cell(kind, part[0], part[1], part[2], "");
    }
    return bad(digits[2] == 2 ? "the year needs four digits; " + ALLOWED : ALLOWED);
  }

  private static Cell bad(String why) {
    return new Cell(Kind.BAD, 0, 0, 0, why);
  }

  /**
   * Where the time of day is parted off that spreadsheets add, as in 2025-06-15T00:00:00 or
   * 15/06/2025 10:30; the end of the text when there is none.
   */
  private static int timeAt(String text) {
    int cut = 8;
    while (cut < text.length() && text.charAt(cut) != 'T' && text.charAt(cut) != ' ') {
      cut++;
    }
    boolean time = cut < text.length() - 1 && text.substring(cut + 1).matches("\\d{1,2}:.*");
    return time ? cut : text.length();
  }
}
