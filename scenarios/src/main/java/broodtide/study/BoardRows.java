package broodtide.study;

import broodtide.forms.Faults;
import broodtide.measure.OutOfRange;
import broodtide.table.CellReader;
import broodtide.wash.BoardCount;
import broodtide.wash.Wash;
import broodtide.wash.WashMethod;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** The rows of a table of washes that are mites fallen on a board. */
final class BoardRows {
  static final String DAYS = "board_days";
  static final String METHOD = "board";
  static final String[] METHODS =
      Stream.concat(Arrays.stream(WashMethod.values()).map(WashMethod::id), Stream.of(METHOD))
          .toArray(String[]::new);

  private final CellReader cells;
  private final Faults faults;
  private final List<BoardCount> counts = new ArrayList<>();
  private final Map<BoardCount, Integer> lines = new HashMap<>();

  BoardRows(CellReader cells, Faults faults) {
    this.cells = cells;
    this.faults = faults;
  }

  /** The wash method of a word that is not {@link #METHOD}. */
  static WashMethod wash(String how) {
    return Arrays.stream(WashMethod.values())
        .filter(m -> m.id().equals(how))
        .findFirst()
        .orElseThrow();
  }

  /** A board has days, and no bees. */
  void check(int line, String[] row) {
    cells.required(line, row, DAYS, "write for how many days the board lay, as 3");
    for (String other : List.of("bees", "frame", "frames_of_bees")) {
      if (!cells.text(row, other).isEmpty()) {
        cells.fault(
            line, row, other, "expected nothing, for a board holds no bees; empty the cell");
      }
    }
  }

  /** A wash has no days. */
  void refuseDays(int line, String[] row) {
    if (!cells.text(row, DAYS).isEmpty()) {
      cells.fault(
          line,
          row,
          DAYS,
          "expected nothing beside a wash; write board as the method, or empty the cell");
    }
  }

  void keep(int line, String[] row, LocalDate date, String colony, int mites) {
    OptionalInt days = cells.count(line, row, DAYS);
    if (days.isEmpty()) {
      return;
    }
    try {
      BoardCount count = new BoardCount(date.minusDays(days.getAsInt()), date, colony, mites);
      counts.add(count);
      lines.putIfAbsent(count, line);
    } catch (OutOfRange e) {
      cells.fault(line, row, e.field(), "expected " + e.allowed());
    }
  }

  void judge() {
    Map<String, BoardCount> before = new HashMap<>();
    List<BoardCount> sorted = new ArrayList<>(counts);
    sorted.sort(Comparator.comparing(BoardCount::date));
    for (BoardCount count : sorted) {
      int line = lines.getOrDefault(count, 0);
      BoardCount last = before.put(count.colony(), count);
      if (last != null && count.from().isBefore(last.date())) {
        faults.add(
            line,
            0,
            "",
            null,
            "the board lay from "
                + count.from()
                + ", before another of the same colony came out on "
                + last.date()
                + "; expected one board at a time; correct the days, or remove one row");
      }
    }
  }

  List<BoardCount> counts() {
    return counts;
  }

  List<String> notes(List<Wash> washes) {
    if (counts.isEmpty()) {
      return List.of();
    }
    List<String> notes = new ArrayList<>();
    notes.add(
        "Mites on a board were counted "
            + (counts.size() == 1 ? "once" : counts.size() + " times")
            + ". They say less than washes, for what falls differs widely between hives. 'growth',"
            + " 'worked', the scores of 'backtest' and 'wash' with a table use washes alone. All"
            + " else reads both together.");
    Set<String> alone = new TreeSet<>();
    counts.forEach(count -> alone.add(count.colony()));
    washes.forEach(wash -> alone.remove(wash.colony()));
    if (!alone.isEmpty()) {
      notes.add(
          "Boards alone are known of "
              + String.join(", ", alone)
              + ": how many mites there are is known within a wide factor, and one wash narrows"
              + " it.");
    }
    return notes;
  }
}
