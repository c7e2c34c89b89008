package broodtide.assessment;

import broodtide.control.Control;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;

/**
 * The days on which treatments of a colony began, however they were named: as controls already
 * carried out, or by their first day alone.
 */
public final class TreatmentDays {
  private TreatmentDays() {}

  /**
   * {@return the first days of the treatments in order, each once}
   *
   * @param given controls already carried out, in any order
   * @param further first days of further treatments, in any order; a day that is named both ways
   *     counts once
   */
  public static List<LocalDate> of(List<Control> given, Collection<LocalDate> further) {
    return Stream.concat(given.stream().map(Control::from), further.stream())
        .distinct()
        .sorted()
        .toList();
  }
}
