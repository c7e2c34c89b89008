package broodtide.forms;

import broodtide.measure.RefusedException;
import java.util.List;

/**
 * An input that cannot be used, with everything that is wrong with it, so that it is mended once.
 */
public final class BadInput extends RefusedException {
  private static final long serialVersionUID = 1L;

  /** Faults shown at most; the rest are counted. */
  public static final int SHOWN = 20;

  private final transient List<Fault> faults;

  /** All faults there are, those listed included. */
  private final int total;

  /**
   * @param faults the first faults, at least one; at most {@value #SHOWN} are shown
   * @param total all faults there are, those listed included
   */
  public BadInput(List<Fault> faults, int total) {
    super(message(faults, total));
    this.faults = List.copyOf(faults);
    this.total = total;
  }

  /**
   * {@return an input with one fault}
   *
   * @param fault the one thing that is wrong
   */
  public static BadInput of(Fault fault) {
    return new BadInput(List.of(fault), 1);
  }

  /** {@return the first faults, in the order of the file} */
  public List<Fault> faults() {
    return faults;
  }

  /** {@return how many faults there are in all} */
  public int total() {
    return total;
  }

  private static String message(List<Fault> faults, int total) {
    if (total == 1) {
      return faults.get(0).text();
    }
    StringBuilder out = new StringBuilder();
    out.append(faults.get(0).file()).append(" has ").append(total).append(" faults:");
    int shown = Math.min(SHOWN, faults.size());
    for (Fault fault : faults.subList(0, shown)) {
      out.append("\n  ").append(fault.text());
    }
    if (total > shown) {
      out.append("\n  ... and ").append(total - shown).append(" more");
    }
    return out.toString();
  }
}
