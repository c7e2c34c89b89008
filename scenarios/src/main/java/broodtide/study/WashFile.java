package broodtide.study;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.forms.Faults;
import broodtide.table.Sheet;
import broodtide.table.SheetText;
import broodtide.wash.BoardCount;
import broodtide.wash.Wash;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The washes of a table file.
 *
 * <p>The header names the columns, in any order and case: {@code date,colony,mites,bees}, of which
 * a {@code bees} cell may be blank when the half cup was not counted, and if wanted {@code
 * method,frame,note,frames_of_bees,yard}. A row whose method is {@code board} has no bees: its
 * mites fell on a board that lay for the {@code board_days} before the date. Cells are parted by
 * commas, semicolons or tabs. Lines before the header that start with {@code #} are remarks. Blanks
 * at the ends of a cell are no part of it; names that differ otherwise, however little, are
 * different colonies, which is noted.
 *
 * @param name the file's name as the user gave it
 * @param washes the washes in the order of the file
 * @param colonies the line on which each colony first stands, in the order of the file
 * @param yards the yard of each colony that names one, in the order of the file
 * @param boards mites that fell on boards, in the order of the file; never two of one colony at a
 *     time
 * @param notes what was assumed, read in one of several ways, or not used, in sentences
 */
public record WashFile(
    String name,
    List<Wash> washes,
    Map<String, Integer> colonies,
    Map<String, String> yards,
    List<BoardCount> boards,
    List<String> notes) {
  /** No wash or treatment is from before this day: a year mistyped. */
  public static final LocalDate EARLIEST = LocalDate.of(1950, 1, 1);

  /** Copies the lists and the maps. */
  public WashFile {
    washes = List.copyOf(washes);
    colonies = Collections.unmodifiableMap(new LinkedHashMap<>(colonies));
    yards = Collections.unmodifiableMap(new LinkedHashMap<>(yards));
    boards = List.copyOf(boards);
    notes = List.copyOf(notes);
  }

  /**
   * Reads washes from bytes: UTF-8, UTF-16 with its mark, or Windows-1252, which is noted.
   *
   * @param in the bytes; not closed here
   * @param name the name to show in messages
   * @param today washes after this day are refused
   * @return the washes
   * @throws BadInput with every fault of the file
   * @throws IOException when it cannot be read at all
   */
  public static WashFile read(InputStream in, String name, LocalDate today) throws IOException {
    return read(SheetText.read(in, name), name, today);
  }

  /**
   * {@return the washes of a file; those after today are refused}
   *
   * @param file a table of washes
   * @throws BadInput with every fault of the file
   * @throws IOException when it cannot be read at all
   */
  public static WashFile read(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return read(in, file.toString(), LocalDate.now(ZoneId.systemDefault()));
    }
  }

  /**
   * Reads washes from characters; see {@link #read(InputStream, String, LocalDate)}.
   *
   * @param in the characters, read to their end
   * @param name what messages call the file
   * @param today no wash may be later
   * @return the washes
   * @throws IOException when the characters cannot be read
   */
  public static WashFile read(Reader in, String name, LocalDate today) throws IOException {
    return read(SheetText.read(in, name), name, today);
  }

  private static WashFile read(SheetText text, String name, LocalDate today) {
    Faults faults = new Faults(name);
    Sheet sheet = Sheet.of(text.text(), name, WashRows.COLUMNS, WashRows.REQUIRED);
    WashRows rows = WashRows.under(sheet, today, faults);
    sheet.each(rows::look, new Faults(name));
    rows.judge();
    sheet.each(rows::take, faults);
    rows.judgeBoards();
    faults.throwIfAny();
    if (rows.washes().isEmpty() && rows.boards().isEmpty()) {
      throw BadInput.of(
          Fault.of(name, "has a header and no washes; add a row such as 2025-06-15,A,7,300"));
    }
    List<String> notes = new ArrayList<>(text.notes());
    notes.addAll(rows.notes());
    return new WashFile(name, rows.washes(), rows.colonies(), rows.yards(), rows.boards(), notes);
  }

  /** {@return the same as {@link #byColony}, with no washes for colonies that have boards alone} */
  public Map<String, List<Wash>> countsByColony() {
    Map<String, List<Wash>> colonies = byColony();
    boards.forEach(board -> colonies.putIfAbsent(board.colony(), List.of()));
    return colonies;
  }

  /** {@return the washes of each colony by date, colonies in the order of their names} */
  public Map<String, List<Wash>> byColony() {
    Map<String, List<Wash>> colonies = new TreeMap<>();
    for (Wash wash : washes) {
      colonies.computeIfAbsent(wash.colony(), c -> new ArrayList<>()).add(wash);
    }
    colonies.values().forEach(each -> each.sort(Comparator.comparing(Wash::date)));
    return colonies;
  }
}
