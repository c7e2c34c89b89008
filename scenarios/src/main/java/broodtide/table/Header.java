package broodtide.table;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.forms.Faults;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Checks that the header of a table has what its rows need, and says what they do not. */
public final class Header {
  /** Columns that are named in a note; the rest are counted. */
  private static final int NAMED = 3;

  private Header() {}

  /**
   * One sentence on the columns that have a name and are not read.
   *
   * @param of what the table is, such as {@code " of the treatments"}; may be empty
   */
  public static Optional<String> unused(List<String> columns, Set<String> known, String of) {
    List<String> unused =
        columns.stream().filter(c -> !c.isEmpty() && !known.contains(c)).distinct().toList();
    if (unused.isEmpty()) {
      return Optional.empty();
    }
    String first =
        unused.stream().limit(NAMED).map(Fault::quoted).collect(Collectors.joining(", "));
    int more = unused.size() - NAMED;
    return Optional.of(
        unused.size() == 1
            ? "Column " + first + of + " is not used."
            : "Columns "
                + first
                + (more > 0 ? " and " + more + " more" : "")
                + of
                + " are not used.");
  }

  /**
   * Checks for required columns and for known ones that are there twice.
   *
   * @throws BadInput when one is missing or there twice
   */
  public static void check(Sheet sheet, List<String> required, Set<String> known, Faults faults) {
    List<String> missing = required.stream().filter(c -> !sheet.columns.contains(c)).toList();
    if (!missing.isEmpty()) {
      faults.add(
          sheet.headerLine,
          0,
          "header",
          String.join(", ", sheet.columns),
          "missing "
              + String.join(", ", missing)
              + "; the first line must name the columns "
              + String.join(",", required));
    }
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < sheet.columns.size(); i++) {
      String column = sheet.columns.get(i);
      if (known.contains(column) && !seen.add(column)) {
        faults.add(
            sheet.headerLine, i + 1, column, column, "the column is there twice; remove one");
      }
    }
    faults.throwIfAny();
  }
}
