package broodtide.study;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** Rows of a table that are read twice: dates first, then everything. */
interface TableRows {
  /** First reading of a row. */
  void look(int line, String[] row);

  /** Between the readings. */
  void judge();

  /** Second reading of a row; what is wrong with it goes to the faults. */
  void take(int line, String[] row);

  /** The date of a row of which no fault is known; null where it can be read in two ways. */
  @Nullable LocalDate date(int line, String[] row);

  /** The same rows, of which none has been taken yet. */
  TableRows forgetful();
}
