package broodtide.cluster;

import java.io.Serializable;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One row of a table that is written: texts, whole numbers, numbers, days, and nothing. */
final class TableRow implements Serializable {
  private static final long serialVersionUID = 1L;

  private final @Nullable Object[] cells;

  private TableRow(@Nullable Object[] cells) {
    this.cells = cells;
  }

  static TableRow of(@Nullable Object... cells) {
    return new TableRow(cells.clone());
  }

  List<@Nullable Object> cells() {
    return Collections.unmodifiableList(Arrays.asList(cells));
  }
}
