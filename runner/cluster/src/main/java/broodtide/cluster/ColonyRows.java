package broodtide.cluster;

import broodtide.forms.Fault;
import broodtide.study.RowSieve;
import broodtide.study.RowSieve.Judged;
import broodtide.study.RowSieve.Table;
import broodtide.study.TreatmentFile;
import broodtide.study.WashFile;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What came of the rows of one colony.
 *
 * @param hive the colony; null when no count of it can be used
 * @param rejectedCounts washes and boards that were rejected
 * @param rejectedGiven treatments that were rejected
 * @param unusedGiven treatments of a colony that has no counts
 */
record ColonyRows(
    @Nullable Hive hive,
    List<RejectedRow> rejectedCounts,
    List<RejectedRow> rejectedGiven,
    int unusedGiven)
    implements Serializable {
  /** Columns beside those of the washes file. */
  static final List<String> FURTHER = List.of("climate", "region");

  private static final int DATE = 0;
  private static final int CONTROL_COLONY = 1;
  private static final int CLIMATE = Table.WASHES.columns().size();
  private static final int REGION = CLIMATE + 1;

  /** Name of the colony of a row of either table. */
  static String colony(InputRow row) {
    return row.cells()[CONTROL_COLONY];
  }

  /** Whether a treatment was given to every colony. */
  static boolean toAll(InputRow row) {
    return colony(row).isEmpty() || colony(row).equals("*");
  }

  /**
   * Judges the rows of one colony together.
   *
   * @param colony its name
   * @param counts its washes and boards, in any order
   * @param own treatments of this colony, in any order
   * @param toAll treatments of every colony
   */
  static ColonyRows of(
      String colony,
      List<InputRow> counts,
      List<InputRow> own,
      List<InputRow> toAll,
      LocalDate today) {
    List<RejectedRow> rejected = new ArrayList<>();
    List<InputRow> sorted = counts.stream().sorted(InputRow.BY_PLACE).toList();
    sorted = agreeing(colony, sorted, CLIMATE, "climate", rejected);
    sorted = agreeing(colony, sorted, REGION, "region", rejected);
    List<InputRow> rows = sorted;
    Judged<WashFile> judged = RowSieve.washes(cells(rows), i -> rows.get(i - 1).place(), today);
    rejected.addAll(rejected(rows, judged.faults()));
    WashFile washes = judged.table();
    if (washes == null || washes.washes().isEmpty()) {
      return new ColonyRows(null, rejected, List.of(), own.size());
    }
    List<InputRow> given =
        Stream.concat(own.stream(), toAll.stream()).sorted(InputRow.BY_PLACE).toList();
    Judged<TreatmentFile> done =
        RowSieve.treatments(cells(given), i -> given.get(i - 1).place(), today);
    List<RejectedRow> rejectedGiven =
        rejected(given, done.faults()).stream().filter(r -> isOf(r, own)).toList();
    List<InputRow> usedGiven = without(given, done.faults());
    Hive hive =
        new Hive(
            colony,
            washes.yards().getOrDefault(colony, ""),
            first(rows, REGION),
            first(rows, CLIMATE),
            without(rows, judged.faults()),
            usedGiven,
            days(washes, usedGiven).min(Comparator.naturalOrder()).orElseThrow(),
            days(washes, usedGiven).max(Comparator.naturalOrder()).orElseThrow(),
            washes.boards().stream().map(b -> b.date()).max(LocalDate::compareTo).orElse(null));
    return new ColonyRows(hive, rejected, rejectedGiven, 0);
  }

  private static boolean isOf(RejectedRow r, List<InputRow> own) {
    return own.stream().anyMatch(row -> row.file().equals(r.file()) && row.line() == r.line());
  }

  private static Stream<LocalDate> days(WashFile washes, List<InputRow> given) {
    return Stream.concat(
        washes.washes().stream().map(w -> w.date()),
        given.stream().map(row -> LocalDate.parse(row.cells()[DATE])));
  }

  static List<String[]> cells(List<InputRow> rows) {
    return rows.stream().map(InputRow::cells).toList();
  }

  /** The washes and boards of a colony whose rows have been judged. */
  static WashFile washes(Hive hive, LocalDate today) {
    WashFile washes = RowSieve.washes(cells(hive.counts()), i -> "row " + i, today).table();
    if (washes == null) {
      throw new IllegalStateException("colony \"" + hive.colony() + "\" has lost its washes");
    }
    return washes;
  }

  /** What a colony was given. */
  static List<broodtide.control.Control> given(Hive hive, LocalDate today) {
    TreatmentFile given = RowSieve.treatments(cells(hive.given()), i -> "row " + i, today).table();
    return given == null ? List.of() : given.of(hive.colony());
  }

  /** What a colony was given and when, the same text for all that were treated alike. */
  static String treatments(Hive hive) {
    return hive.given().stream()
        .map(
            row -> {
              String[] cells = row.cells().clone();
              cells[CONTROL_COLONY] = "";
              return String.join("\t", cells);
            })
        .sorted()
        .collect(Collectors.joining("\n"));
  }

  private static String first(List<InputRow> rows, int cell) {
    return rows.stream().map(r -> r.cells()[cell]).filter(c -> !c.isEmpty()).findFirst().orElse("");
  }

  /** Rows that name what the first row does that names any, or nothing. */
  private static List<InputRow> agreeing(
      String colony, List<InputRow> rows, int cell, String column, List<RejectedRow> rejected) {
    String held = first(rows, cell);
    List<InputRow> out = new ArrayList<>();
    for (InputRow row : rows) {
      String value = row.cells()[cell];
      if (value.isEmpty() || value.equals(held)) {
        out.add(row);
      } else {
        rejected.add(
            row.rejected(
                column,
                value,
                "colony \""
                    + colony
                    + "\" has \""
                    + held
                    + "\" on an earlier row; expected one "
                    + column
                    + " for each colony; write it the same way on all of its rows"));
      }
    }
    return out;
  }

  static List<RejectedRow> rejected(List<InputRow> rows, List<Fault> faults) {
    SortedMap<Integer, List<Fault>> byRow = new TreeMap<>();
    faults.forEach(f -> byRow.computeIfAbsent(f.line(), l -> new ArrayList<>()).add(f));
    List<RejectedRow> out = new ArrayList<>();
    byRow.forEach(
        (place, found) -> {
          InputRow row = rows.get(place - 1);
          out.add(RejectedRow.of(row.file(), row.line(), found));
        });
    return out;
  }

  static List<InputRow> without(List<InputRow> rows, List<Fault> faults) {
    Set<Integer> aside = new HashSet<>();
    faults.forEach(f -> aside.add(f.line()));
    List<InputRow> out = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      if (!aside.contains(i + 1)) {
        out.add(rows.get(i));
      }
    }
    return out;
  }
}
