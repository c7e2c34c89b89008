package broodtide.study;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.forms.Faults;
import broodtide.table.Header;
import broodtide.table.Sheet;
import broodtide.table.SheetText;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * Reads tables that are too large to be sent back for one bad row: rows are read as {@link
 * WashFile} and {@link TreatmentFile} read them and refused for the same faults, but a row with
 * faults is set aside and the others go on. Rows that are sound by themselves come out as cells in
 * one order, with dates as ISO 8601; {@link #washes} and {@link #treatments} then judge those of
 * one colony together, from however many files.
 *
 * @since 0.2.0
 */
public final class RowSieve {
  /** The tables that can be sifted. */
  @SuppressWarnings("ImmutableEnumChecker") // its lists are made by List.of
  public enum Table {
    /** Washes and boards, see {@link WashFile}. */
    WASHES(WashRows.ORDER, WashRows.REQUIRED),
    /** Treatments already given, see {@link TreatmentFile}. */
    TREATMENTS(TreatmentRows.ORDER, TreatmentRows.REQUIRED);

    private final List<String> columns;
    private final List<String> required;

    Table(List<String> columns, List<String> required) {
      this.columns = columns;
      this.required = required;
    }

    /** {@return the columns that are read, in the order of the cells that come out} */
    public List<String> columns() {
      return columns;
    }

    /** {@return the columns that must be there} */
    public List<String> required() {
      return required;
    }

    private TableRows rows(List<String> names, LocalDate today, Faults faults) {
      return this == WASHES
          ? WashRows.of(names, today, faults, WashRows.PLACE)
          : TreatmentRows.of(names, today, faults, WashRows.PLACE);
    }
  }

  /** Takes the rows. */
  public interface Taker {
    /**
     * Takes a row that is sound by itself.
     *
     * @param line line of the file, from 1
     * @param cells the cells of {@link Table#columns}, then those of the further columns
     */
    void sound(int line, String[] cells);

    /**
     * Takes a row that is not.
     *
     * @param line line of the file, from 1
     * @param faults what is wrong with it, at least one
     */
    void faulty(int line, List<Fault> faults);
  }

  /** Reads one row after the other. */
  @FunctionalInterface
  public interface Rows {
    /**
     * Gives every row, in order.
     *
     * @param row takes it
     */
    void each(Sheet.Row row);
  }

  private RowSieve() {}

  /**
   * Sifts a table of text.
   *
   * @param table what it is
   * @param in its bytes; not closed here
   * @param name the name to show in messages
   * @param further columns to hand on besides those of the table
   * @param today days after this one are refused
   * @param taker takes its rows
   * @throws BadInput when the whole file cannot be read as such a table
   * @throws IOException when it cannot be read at all
   */
  public static void sift(
      Table table, InputStream in, String name, List<String> further, LocalDate today, Taker taker)
      throws IOException {
    Set<String> known = new HashSet<>(table.columns);
    known.addAll(further);
    Sheet sheet = Sheet.of(SheetText.read(in, name).text(), name, known, table.required);
    Header.check(sheet, table.required, known, new Faults(name));
    List<Fault> found = new ArrayList<>();
    Faults faults = new Faults(name, found::add);
    TableRows rows = table.rows(sheet.columns, today, faults);
    sheet.each(rows::look, new Faults(name));
    rows.judge();
    found.clear();
    One one = new One(table, sheet.columns, further, name, rows, found, taker);
    sheet.each(one::take, faults);
  }

  /**
   * Sifts rows that are cells already. No row says how the dates of others are to be read: one that
   * can be read in two ways is set aside.
   *
   * @param table what they are rows of
   * @param columns what their cells are
   * @param name the name to show in messages
   * @param further columns to hand on besides those of the table
   * @param today days after this one are refused
   * @param all gives the rows
   * @param taker takes them
   */
  public static void sift(
      Table table,
      List<String> columns,
      String name,
      List<String> further,
      LocalDate today,
      Rows all,
      Taker taker) {
    List<Fault> found = new ArrayList<>();
    TableRows rows = table.rows(columns, today, new Faults(name, found::add));
    all.each(new One(table, columns, further, name, rows, found, taker)::take);
  }

  /** One row after the other. */
  private static final class One {
    private final String name;
    private final TableRows rows;
    private final List<Fault> found;
    private final Taker taker;
    private final int[] places;
    private final int date;

    One(
        Table table,
        List<String> columns,
        List<String> further,
        String name,
        TableRows rows,
        List<Fault> found,
        Taker taker) {
      this.name = name;
      this.rows = rows;
      this.found = found;
      this.taker = taker;
      this.date = columns.indexOf("date");
      List<String> out = new ArrayList<>(table.columns);
      out.addAll(further);
      this.places = out.stream().mapToInt(columns::indexOf).toArray();
    }

    void take(int line, String[] cells) {
      LocalDate day = null;
      if (found.isEmpty()) {
        TableRows alone = rows.forgetful();
        alone.take(line, cells);
        day = found.isEmpty() ? alone.date(line, cells) : null;
      }
      if (found.isEmpty() && day == null) {
        found.add(
            new Fault(
                name,
                line,
                date + 1,
                "date",
                cells[date],
                "day and month cannot be told apart; write dates as 2025-06-15"));
      }
      if (found.isEmpty()) {
        String[] out = new String[places.length];
        for (int i = 0; i < out.length; i++) {
          out[i] = places[i] < 0 ? "" : cells[places[i]];
        }
        out[0] = String.valueOf(day);
        taker.sound(line, out);
      } else {
        taker.faulty(line, List.copyOf(found));
        found.clear();
      }
    }
  }

  /**
   * Rows of one colony, judged together.
   *
   * @param <T> what they were made into
   * @param table the sound ones; null when there is none
   * @param faults what is wrong with the others; the line of a fault is the place of its row in the
   *     list, from 1
   */
  public record Judged<T>(@Nullable T table, List<Fault> faults) {
    /** Copies the list. */
    public Judged {
      faults = List.copyOf(faults);
    }
  }

  /**
   * {@return the washes and boards of one colony without those that cannot stand beside earlier
   * ones}
   *
   * @param rows cells as {@link #sift} hands them on
   * @param place what messages call a row, by its place in the list from 1
   * @param today days after this one are refused
   */
  public static Judged<WashFile> washes(
      List<String[]> rows, IntFunction<String> place, LocalDate today) {
    return judged(
        rows,
        Table.WASHES,
        faults -> WashRows.of(Table.WASHES.columns, today, faults, place),
        WashRows::judgeBoards,
        reading ->
            new WashFile(
                "",
                reading.washes(),
                reading.colonies(),
                reading.yards(),
                reading.boards(),
                List.of()));
  }

  /**
   * {@return the treatments of one colony without those that cannot stand beside earlier ones}
   *
   * @param rows cells as {@link #sift} hands them on
   * @param place what messages call a row, by its place in the list from 1
   * @param today days after this one are refused
   */
  public static Judged<TreatmentFile> treatments(
      List<String[]> rows, IntFunction<String> place, LocalDate today) {
    return judged(
        rows,
        Table.TREATMENTS,
        faults -> TreatmentRows.of(Table.TREATMENTS.columns, today, faults, place),
        reading -> {},
        reading -> new TreatmentFile("", reading.given(), reading.colonies(), List.of()));
  }

  /**
   * Reads the rows again and again, each time without those that had faults, until none has.
   *
   * @param begin makes a reading that tells its faults
   * @param last judges what was read as a whole
   * @param made makes the table
   */
  private static <R extends TableRows, T> Judged<T> judged(
      List<String[]> rows,
      Table table,
      Function<Faults, R> begin,
      Consumer<R> last,
      Function<R, T> made) {
    List<Fault> all = new ArrayList<>();
    Set<Integer> aside = new HashSet<>();
    while (aside.size() < rows.size()) {
      List<Fault> found = new ArrayList<>();
      R reading = begin.apply(new Faults("", found::add));
      each(rows, aside, table, reading);
      last.accept(reading);
      if (found.isEmpty()) {
        return new Judged<>(made.apply(reading), all);
      }
      setAside(found, aside);
      all.addAll(found);
    }
    return new Judged<>(null, all);
  }

  private static void setAside(List<Fault> found, Set<Integer> aside) {
    if (!aside.addAll(found.stream().map(Fault::line).toList())) {
      throw new IllegalStateException("the faults " + found + " are of no row; expected its place");
    }
  }

  private static void each(
      List<String[]> rows, Set<Integer> aside, Table table, TableRows reading) {
    for (int i = 0; i < rows.size(); i++) {
      if (!aside.contains(i + 1)) {
        reading.take(i + 1, Arrays.copyOf(rows.get(i), table.columns.size()));
      }
    }
  }
}
