package broodtide.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Gathers the faults of one file; keeps the first ones and counts the rest. */
public final class Faults {
  private final String file;
  private final List<Fault> kept = new ArrayList<>();
  private int total;

  /**
   * @param file the file's name as the user gave it
   */
  public Faults(String file) {
    this.file = file;
  }

  /** Adds a fault; see {@link Fault} for what each part means. */
  public void add(int line, int column, String field, @Nullable String value, String message) {
    total++;
    if (kept.size() < BadInput.SHOWN) {
      kept.add(new Fault(file, line, column, field, value, message));
    }
  }

  /** How many were added. */
  public int total() {
    return total;
  }

  /**
   * Ends the reading when anything was added.
   *
   * @throws BadInput with the faults in the order of their lines
   */
  public void throwIfAny() {
    if (total > 0) {
      kept.sort(Comparator.comparingInt(Fault::line).thenComparingInt(Fault::column));
      throw new BadInput(kept, total);
    }
  }
}
