package broodtide.forms;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Gathers the faults of one file; keeps the first ones and counts the rest. */
public final class Faults {
  private final String file;
  private final List<Fault> kept = new ArrayList<>();
  private final Consumer<Fault> each;
  private int total;

  /**
   * @param file the file's name as the user gave it
   */
  public Faults(String file) {
    this(file, fault -> {});
  }

  /**
   * @param file the file's name as the user gave it
   * @param each is told of every fault as it is found, however many there are
   */
  public Faults(String file, Consumer<Fault> each) {
    this.file = file;
    this.each = each;
  }

  /**
   * Adds a fault; see {@link Fault} for what each part means.
   *
   * @param line line in the file, from 1; 0 when there is none
   * @param column column in the line, from 1; 0 when there is none
   * @param field path or column name
   * @param value the value as it was given, null when it is missing
   * @param message what is allowed and how to mend it
   */
  public void add(int line, int column, String field, @Nullable String value, String message) {
    total++;
    Fault fault = new Fault(file, line, column, field, value, message);
    each.accept(fault);
    if (kept.size() < BadInput.SHOWN) {
      kept.add(fault);
    }
  }

  /** {@return how many were added} */
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
