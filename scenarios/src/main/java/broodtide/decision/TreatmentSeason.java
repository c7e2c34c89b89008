package broodtide.decision;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.QuantileSummary;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Quantity;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The season of a treated colony as its washes tell it, and as it would have gone without the
 * treatment; and what is believed of the efficacy.
 *
 * @param days some days of the season, the first and the last among them
 * @param believed share of all mites that the treatment takes by the day of the wash after it, by
 *     member, as believed before the washes
 * @param found the same with the washes
 */
@SuppressWarnings("ArrayRecordComponent") // thousands of figures, read only, never compared
public record TreatmentSeason(List<Day> days, double[] believed, double[] found) {
  /** Days from one to the next; a curve of a season needs no more. */
  private static final int EVERY = 2;

  /** Copies the list. */
  public TreatmentSeason {
    days = List.copyOf(days);
  }

  /**
   * One day.
   *
   * @param date the day
   * @param treated mites per 100 adult bees as it went
   * @param untreated mites per 100 adult bees without the treatment; empty before it
   */
  public record Day(LocalDate date, QuantileSummary treated, Optional<QuantileSummary> untreated) {}

  static TreatmentSeason of(
      ColonyCase c,
      LocalDate treatment,
      EnsembleRun with,
      EnsembleRun without,
      double[] believed,
      double[] found) {
    List<Day> days = new ArrayList<>();
    LocalDate last = c.until().minusDays(1);
    for (LocalDate d = c.start(); d.isBefore(last); d = next(d, treatment)) {
      days.add(day(d, treatment, with, without));
    }
    days.add(day(last, treatment, with, without));
    return new TreatmentSeason(days, believed, found);
  }

  /** The day of the treatment is never passed over. */
  private static LocalDate next(LocalDate d, LocalDate treatment) {
    LocalDate next = d.plusDays(EVERY);
    return d.isBefore(treatment) && next.isAfter(treatment) ? treatment : next;
  }

  private static Day day(LocalDate d, LocalDate treatment, EnsembleRun with, EnsembleRun without) {
    return new Day(
        d,
        QuantileSummary.of(with.values(Quantity.INFESTATION, d)),
        d.isBefore(treatment)
            ? Optional.empty()
            : Optional.of(QuantileSummary.of(without.values(Quantity.INFESTATION, d))));
  }
}
