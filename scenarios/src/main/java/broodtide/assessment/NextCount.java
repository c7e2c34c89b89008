package broodtide.assessment;

import broodtide.wash.Wash;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The count that a hive needs before its figures rest on more than what is usual.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @param reason what is lacking
 * @param by the day by which to wash, no earlier than the decision date
 */
public record NextCount(Reason reason, LocalDate by) {
  /** After so many days mites may have doubled twice, and a count says little of today. Choice. */
  public static final int OLD = 42;

  /** Days between two counts that tell growth. Choice. */
  public static final int APART = 28;

  /** What is lacking. */
  public enum Reason {
    /** No bees were washed yet. */
    NO_COUNT("no-count"),
    /** The last count is more than {@value NextCount#OLD} days old. */
    OLD_COUNT("old-count"),
    /** All counts are of one day, which says nothing of growth. */
    ONE_DAY("one-day");

    private final String id;

    Reason(String id) {
      this.id = id;
    }

    /** {@return the word in files} */
    public String id() {
      return id;
    }
  }

  /**
   * {@return the count that a hive needs; empty where its counts are enough}
   *
   * @param washes counts of the hive up to the decision date
   * @param now the decision date
   */
  public static Optional<NextCount> of(List<Wash> washes, LocalDate now) {
    Optional<LocalDate> last = washes.stream().map(Wash::date).max(Comparator.naturalOrder());
    if (last.isEmpty()) {
      return Optional.of(new NextCount(Reason.NO_COUNT, now));
    }
    if (ChronoUnit.DAYS.between(last.get(), now) > OLD) {
      return Optional.of(new NextCount(Reason.OLD_COUNT, now));
    }
    if (washes.stream().map(Wash::date).distinct().count() > 1) {
      return Optional.empty();
    }
    LocalDate day = last.get().plusDays(APART);
    return Optional.of(new NextCount(Reason.ONE_DAY, day.isBefore(now) ? now : day));
  }
}
