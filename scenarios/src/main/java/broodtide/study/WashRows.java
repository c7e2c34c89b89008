package broodtide.study;

import broodtide.forms.BadInput;
import broodtide.forms.Faults;
import broodtide.forms.HiddenCharacters;
import broodtide.forms.TextForm;
import broodtide.measure.OutOfRange;
import broodtide.table.CellReader;
import broodtide.table.Header;
import broodtide.table.PastDays;
import broodtide.table.Sheet;
import broodtide.wash.BoardCount;
import broodtide.wash.Frame;
import broodtide.wash.HalfCup;
import broodtide.wash.Wash;
import broodtide.wash.WashMethod;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/** Turns the rows of a sheet into washes, in two readings: dates first, then everything. */
final class WashRows implements TableRows {
  /** Columns that are read, in the order of {@link RowSieve}. */
  static final List<String> ORDER =
      List.of(
          "date",
          "colony",
          "mites",
          "bees",
          "method",
          "frame",
          "note",
          "frames_of_bees",
          "yard",
          BoardRows.DAYS);

  static final Set<String> COLUMNS = Set.copyOf(ORDER);

  /** What messages call a line of the one file that there is. */
  static final IntFunction<String> PLACE = line -> "line " + line;

  static final List<String> REQUIRED = List.of("date", "colony", "mites", "bees");

  private final List<String> columns;
  private final Faults faults;
  private final CellReader cells;
  private final PastDays dates;
  private final BoardRows boards;
  private final IntFunction<String> place;

  /** With fewer bees a wash says little, and is more often a slip. */
  private static final int FEW_BEES = 100;

  /** Washes that a note lists; the rest are counted. */
  private static final int LISTED = 5;

  private final List<Wash> washes = new ArrayList<>();
  private final Map<Wash, Integer> lines = new HashMap<>();

  /** One string for each name, however many rows have it. */
  private final Map<String, String> names = new HashMap<>();

  private final Map<String, Integer> colonies = new LinkedHashMap<>();
  private final Map<String, String> yards = new LinkedHashMap<>();
  private final Map<String, Integer> yardLines = new HashMap<>();
  private boolean nameless;

  private WashRows(
      List<String> columns,
      Faults faults,
      CellReader cells,
      PastDays dates,
      IntFunction<String> place) {
    this.columns = columns;
    this.faults = faults;
    this.cells = cells;
    this.boards = new BoardRows(cells, faults);
    this.dates = dates;
    this.place = place;
  }

  /**
   * Checks the header.
   *
   * @throws BadInput when a required column is missing or one is there twice
   */
  static WashRows under(Sheet sheet, LocalDate today, Faults faults) {
    Header.check(sheet, REQUIRED, COLUMNS, faults);
    return of(sheet.columns, today, faults, PLACE);
  }

  /**
   * Rows without a header of their own.
   *
   * @param place what messages call a line
   */
  static WashRows of(
      List<String> columns, LocalDate today, Faults faults, IntFunction<String> place) {
    CellReader cells = new CellReader(columns, faults);
    PastDays dates =
        new PastDays(
            columns,
            cells,
            faults,
            WashFile.EARLIEST,
            today,
            "write the day of the wash as 2025-06-15");
    return new WashRows(columns, faults, cells, dates, place);
  }

  @Override
  public WashRows forgetful() {
    return new WashRows(columns, faults, cells, dates, place);
  }

  @Override
  public @Nullable LocalDate date(int line, String[] row) {
    return dates.read(line, row);
  }

  @Override
  public void look(int line, String[] row) {
    dates.look(line, row);
  }

  @Override
  public void judge() {
    dates.judge();
  }

  @Override
  public void take(int line, String[] row) {
    int before = faults.total();
    LocalDate date = dates.read(line, row);
    cells.required(line, row, "colony", "give the colony a name");
    cells.limit(line, row, "colony", TextForm.LINE);
    cells.limit(line, row, "note", TextForm.NOTE);
    cells.limit(line, row, "yard", TextForm.LINE);
    OptionalInt mites = cells.count(line, row, "mites");
    if (mites.isEmpty() && cells.text(row, "mites").isEmpty()) {
      cells.required(line, row, "mites", "write 0 when none were found, or remove the row");
    }
    OptionalInt bees = cells.count(line, row, "bees");
    String how =
        cells.choice(line, row, "method", BoardRows.METHODS, m -> m, WashMethod.ALCOHOL.id());
    boolean board = how.equals(BoardRows.METHOD);
    if (board) {
      boards.check(line, row);
    } else {
      boards.refuseDays(line, row);
    }
    Frame frame = cells.choice(line, row, "frame", Frame.values(), Frame::id, Frame.MIXED);
    OptionalDouble strength = cells.number(line, row, "frames_of_bees");
    for (int i = 0; i < row.length; i++) {
      nameless |= columns.get(i).isEmpty() && !row[i].isEmpty();
    }
    if (date == null || mites.isEmpty() || faults.total() > before) {
      return;
    }
    String name = names.computeIfAbsent(cells.name(row, "colony"), c -> c);
    colonies.putIfAbsent(name, line);
    if (!inOneYard(line, row, name)) {
      return;
    }
    if (board) {
      boards.keep(line, row, date, name, mites.getAsInt());
      return;
    }
    WashMethod method = BoardRows.wash(how);
    String note = HiddenCharacters.marked(cells.text(row, "note"));
    try {
      keep(line, new Wash(date, name, mites.getAsInt(), bees, method, frame, note, strength));
    } catch (OutOfRange e) {
      cells.fault(line, row, e.field(), "expected " + e.allowed() + mend(e.field()));
    }
  }

  /** Remembers the yard of a colony; false where the file has put it into another before. */
  private boolean inOneYard(int line, String[] row, String colony) {
    String yard = cells.name(row, "yard");
    if (yard.isEmpty()) {
      return true;
    }
    String before = yards.putIfAbsent(colony, names.computeIfAbsent(yard, y -> y));
    if (before == null) {
      yardLines.put(colony, line);
      return true;
    }
    if (!before.equals(yard)) {
      cells.fault(
          line,
          row,
          "yard",
          "colony \""
              + colony
              + "\" stands in \""
              + before
              + "\" on "
              + place.apply(yardLines.getOrDefault(colony, 0))
              + "; expected one yard for each colony; write where it stands now on all of its"
              + " rows");
      return false;
    }
    return true;
  }

  private static String mend(String field) {
    return field.equals("mites") ? "; look whether mites and bees are swapped" : "";
  }

  private void keep(int line, Wash wash) {
    Integer first = lines.putIfAbsent(wash, line);
    if (first != null) {
      faults.add(
          line,
          0,
          "",
          null,
          "the row is the same as "
              + place.apply(first)
              + "; remove it, or tell two equal washes apart in the column note");
      return;
    }
    washes.add(wash);
  }

  /** The washes, in the order of the file. */
  List<Wash> washes() {
    return washes;
  }

  /** The line on which each colony first stands, in the order of the file. */
  Map<String, Integer> colonies() {
    return colonies;
  }

  /** The yard of each colony that names one, in the order of the file. */
  Map<String, String> yards() {
    return yards;
  }

  /** Mites on boards, in the order of the file. */
  List<BoardCount> boards() {
    return boards.counts();
  }

  /** After the second reading: boards of one colony lie one after the other. */
  void judgeBoards() {
    boards.judge();
  }

  /** What was assumed, or not used. */
  List<String> notes() {
    List<String> notes = new ArrayList<>(dates.notes());
    Header.unused(columns, COLUMNS, "").ifPresent(notes::add);
    if (nameless) {
      notes.add("A column without a name in the header is not used.");
    }
    notes.addAll(boards.notes(washes));
    long uncounted = washes.stream().filter(Wash::beesAssumed).count();
    if (uncounted > 0) {
      notes.add(
          String.format(
              Locale.ROOT,
              "Bees were not counted in %d of %d washes; half a cup of %.0f bees, give or take"
                  + " %.0f, is assumed there.",
              uncounted,
              washes.size(),
              HalfCup.usual().bees(),
              HalfCup.usual().sd()));
    }
    // Both are said in the help and in the report; one column without the other may be a slip.
    if (!columns.contains("method") && columns.contains("frame")) {
      notes.add("There is no column method; alcohol is assumed.");
    }
    if (!columns.contains("frame") && columns.contains("method")) {
      notes.add("There is no column frame; bees of mixed frames are assumed.");
    }
    notes.addAll(LookalikeNames.within(LookalikeNames.lines(colonies, "")));
    notes.addAll(smallOnes());
    Map<String, Set<LocalDate>> days = new HashMap<>();
    long again =
        washes.stream()
            .filter(w -> !days.computeIfAbsent(w.colony(), c -> new HashSet<>()).add(w.date()))
            .count();
    if (again > 0) {
      notes.add("Some colonies were washed more than once on a day; all counts are used.");
    }
    return notes;
  }

  /** A lost digit is easily typed, and turns a wash of 310 bees into one of 31. */
  private List<String> smallOnes() {
    List<String> few =
        washes.stream()
            .filter(w -> w.bees().isPresent() && w.bees().getAsInt() < FEW_BEES)
            .map(w -> w.bees().getAsInt() + " on line " + lines.get(w))
            .toList();
    if (few.isEmpty()) {
      return List.of();
    }
    int more = few.size() - LISTED;
    return List.of(
        "Few bees for a wash: "
            + String.join(", ", few.subList(0, Math.min(LISTED, few.size())))
            + (more > 0 ? " and " + more + " more" : "")
            + "; look whether a digit is missing.");
  }
}
