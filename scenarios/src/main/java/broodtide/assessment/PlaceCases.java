package broodtide.assessment;

import broodtide.control.Control;
import broodtide.fit.Priors;
import broodtide.measure.OutOfRange;
import broodtide.measure.Unworkable;
import broodtide.wash.BoardCount;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;

/**
 * Makes the cases of colonies that stand at one place and are decided on one day. What their winter
 * is like is worked out once for all of them.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @since 0.2.0
 */
public final class PlaceCases {
  private final Place place;
  private final LocalDate now;
  private final LocalDate until;
  private final WinterAhead winter;

  private PlaceCases(Place place, LocalDate now, LocalDate until) {
    this.place = place;
    this.now = now;
    this.until = until;
    this.winter = WinterAhead.of(place.model(), now);
  }

  /**
   * {@return what makes the cases}
   *
   * @param place where the colonies stand
   * @param now the day of decision
   * @param horizon how far to look ahead
   * @throws OutOfRange when the horizon is not after the day of decision, or more than {@link
   *     ColonyCases#MOST_YEARS} years away
   */
  public static PlaceCases of(Place place, LocalDate now, Horizon horizon) {
    YearStages stages = new YearStages(place.model().climate());
    LocalDate wanted = horizon.of(stages, now);
    ColonyCases.checkUntil(ColonyCases.UNTIL, wanted, now);
    return new PlaceCases(place, now, stages.believedUntil(now, wanted));
  }

  /**
   * {@return the case of a colony, in no yard yet; its boards say when it was first seen, and are
   * told it by {@link ColonyCases#withBoards(ColonyCase, List, java.util.Optional)}}
   *
   * @param colony its name
   * @param washes its washes by date; none for a colony with boards alone
   * @param boards mites on boards under this colony and others
   * @param given controls already carried out
   * @throws OutOfRange when it was washed or treated after the day of decision
   * @throws Unworkable when it has no count, or its days span too many years
   */
  public ColonyCase of(
      String colony, List<Wash> washes, List<BoardCount> boards, List<Control> given) {
    LocalDate seen =
        washes.isEmpty() ? ColonyCases.firstBoard(colony, boards, now) : washes.get(0).date();
    ColonyCases.checkPast(colony, now, washes, given);
    return new ColonyCase(
        colony,
        place.model(),
        ColonyCases.start(seen, given),
        now,
        until,
        washes,
        given,
        place.thresholds(),
        Priors.defaults(),
        winter,
        ColonyCase.NO_YARD,
        List.of());
  }
}
