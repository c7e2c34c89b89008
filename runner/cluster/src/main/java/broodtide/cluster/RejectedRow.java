package broodtide.cluster;

import broodtide.forms.Fault;
import broodtide.results.SheetColumns.Column;
import broodtide.results.SheetColumns.Kind;
import java.io.Serializable;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A row that could not be used. There is one for each such row, with all that is wrong with it.
 *
 * @param file the file that it stands in
 * @param line its line, from 1
 * @param column the column of its first fault; empty when the fault is of the whole row
 * @param value what stands there; empty when nothing does
 * @param reason what is allowed and how to mend it
 */
record RejectedRow(String file, int line, String column, String value, String reason)
    implements Serializable, Comparable<RejectedRow> {
  static final List<Column> COLUMNS =
      List.of(
          new Column("file", Kind.TEXT),
          new Column("line", Kind.COUNT),
          new Column("column", Kind.TEXT),
          new Column("value", Kind.TEXT),
          new Column("reason", Kind.TEXT));

  private static final Comparator<RejectedRow> ORDER =
      Comparator.comparing(RejectedRow::file)
          .thenComparingInt(RejectedRow::line)
          .thenComparing(RejectedRow::reason);

  /** The row of faults that were found together. */
  static RejectedRow of(String file, int line, List<Fault> faults) {
    Fault first = faults.get(0);
    String more =
        faults.stream()
            .skip(1)
            .map(f -> "; " + f.field() + (f.field().isEmpty() ? "" : ": ") + f.message())
            .collect(Collectors.joining());
    String value = first.value() == null ? "" : first.value();
    return new RejectedRow(file, line, first.field(), value, first.message() + more);
  }

  @Override
  public int compareTo(RejectedRow other) {
    return ORDER.compare(this, other);
  }

  TableRow cells() {
    return TableRow.of(file, line, column, value, reason);
  }
}
