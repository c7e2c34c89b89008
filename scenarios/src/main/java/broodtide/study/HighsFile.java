package broodtide.study;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.forms.Faults;
import broodtide.season.DailyHighs;
import broodtide.table.CellReader;
import broodtide.table.Header;
import broodtide.table.PastDays;
import broodtide.table.Sheet;
import broodtide.table.SheetText;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Daily highs of single days, recorded or forecast, from a table file.
 *
 * <p>The header names the columns {@code date,high}, in any order and case; highs are degrees
 * Celsius. Cells are parted and dates are read as in {@link WashFile}.
 *
 * @param name the file's name as the user gave it
 * @param highs the highs by day
 * @param notes what was read in one of several ways or not used, in sentences
 */
public record HighsFile(String name, DailyHighs highs, List<String> notes) {
  /** Days that a forecast may lie ahead. */
  private static final int AHEAD = 366;

  private static final List<String> REQUIRED = List.of("date", "high");
  private static final Set<String> COLUMNS = Set.of("date", "high", "note");
  private static final double LEAST = -60;
  private static final double MOST = 60;

  /** Copies the list. */
  public HighsFile {
    notes = List.copyOf(notes);
  }

  /**
   * Reads highs from bytes; see {@link WashFile#read(InputStream, String, LocalDate)}.
   *
   * @param in the bytes; not closed here
   * @param name the name to show in messages
   * @param today a forecast may lie up to a year after this day
   * @return the highs
   * @throws BadInput with every fault of the file
   * @throws IOException when it cannot be read at all
   */
  public static HighsFile read(InputStream in, String name, LocalDate today) throws IOException {
    SheetText text = SheetText.read(in, name);
    Faults faults = new Faults(name);
    Sheet sheet = Sheet.of(text.text(), name, COLUMNS, REQUIRED);
    Header.check(sheet, REQUIRED, COLUMNS, faults);
    CellReader cells = new CellReader(sheet.columns, faults);
    PastDays days =
        new PastDays(
            sheet.columns,
            cells,
            faults,
            WashFile.EARLIEST,
            today.plusDays(AHEAD),
            "write the day as 2025-08-15");
    sheet.each(days::look, new Faults(name));
    days.judge();
    Map<LocalDate, Integer> lines = new TreeMap<>();
    TreeMap<LocalDate, Double> highs = new TreeMap<>();
    sheet.each(
        (line, row) -> {
          LocalDate day = days.read(line, row);
          String written = cells.required(line, row, "high", "write the high as 21.5");
          if (day == null || written.isEmpty()) {
            return;
          }
          Integer first = lines.putIfAbsent(day, line);
          if (first != null) {
            cells.fault(
                line, row, "date", "the day stands on line " + first + " already; remove one");
            return;
          }
          cells
              .signed(line, row, "high")
              .ifPresent(
                  high -> {
                    if (high < LEAST || high > MOST) {
                      cells.fault(
                          line,
                          row,
                          "high",
                          "expected -60 to 60 degrees Celsius"
                              + (high > MOST ? "; turn Fahrenheit into Celsius" : ""));
                    } else {
                      highs.put(day, high);
                    }
                  });
        },
        faults);
    faults.throwIfAny();
    if (highs.isEmpty()) {
      throw BadInput.of(
          Fault.of(name, "has a header and no days; add a row such as 2025-08-15,21.5"));
    }
    List<String> notes = new ArrayList<>(text.notes());
    notes.addAll(days.notes());
    Header.unused(sheet.columns, COLUMNS, " of the daily highs").ifPresent(notes::add);
    return new HighsFile(name, new DailyHighs(highs), notes);
  }
}
