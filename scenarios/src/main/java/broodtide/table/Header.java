package broodtide.table;

import broodtide.forms.BadInput;
import broodtide.forms.Faults;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Checks that the header of a table has what its rows need. */
public final class Header {
  private Header() {}

  /**
   * Checks for required columns and for known ones that are there twice.
   *
   * @throws BadInput when one is missing or there twice
   */
  static void check(Sheet sheet, List<String> required, Set<String> known, Faults faults) {
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
