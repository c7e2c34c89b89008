package broodtide.cluster;

import java.io.Serializable;
import java.util.Comparator;

/**
 * One row of a table that is sound by itself.
 *
 * @param file the file that it stands in
 * @param line its line, from 1
 * @param cells its cells, in the order in which {@link broodtide.study.RowSieve} hands them on
 */
@SuppressWarnings("ArrayRecordComponent") // passed on, never compared
record InputRow(String file, int line, String[] cells) implements Serializable {
  /** As the table has them. */
  static final Comparator<InputRow> BY_PLACE =
      Comparator.comparing(InputRow::file).thenComparingInt(InputRow::line);

  /** Where the row stands, for people. */
  String place() {
    return "line " + line + " of " + file;
  }

  /** The row set aside. */
  RejectedRow rejected(String column, String value, String reason) {
    return new RejectedRow(file, line, column, value, reason);
  }
}
