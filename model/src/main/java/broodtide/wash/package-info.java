/**
 * Mite washes: what was counted, and what one count says.
 *
 * <p>A {@link broodtide.wash.Wash} is the mites found in a sample of adult bees of one colony on a
 * day, with the {@link broodtide.wash.WashMethod} and the {@link broodtide.wash.Frame} that the
 * bees came from. Where nobody counted the bees, {@link broodtide.wash.HalfCup} says what half a
 * cup holds. Entry points:
 *
 * <ul>
 *   <li>{@link broodtide.wash.Infestation#of} reads one wash in three ways: as counted, as an
 *       alcohol wash would have shown it, and as the infestation of the colony. Each is a {@link
 *       broodtide.wash.RatePosterior} with intervals;
 *   <li>{@link broodtide.wash.ThresholdSet} holds the treatment thresholds of one source through
 *       the year; a {@link broodtide.wash.Threshold} holds in a {@link broodtide.wash.Stage} of the
 *       season or on days of the calendar;
 *   <li>{@link broodtide.wash.SamplePlan} says how many bees and hives to wash for a precision, and
 *       how often a wash would find nothing.
 * </ul>
 *
 * <p>Infestation is in mites per 100 adult bees. Recovery of a method and the part of a frame are
 * each a {@link broodtide.wash.Factor} with a mean, a spread and a source, so that doubt about them
 * widens the interval.
 *
 * <p>All figures are exact sums or integrals with fixed nodes: no random numbers, so the same wash
 * always gives the same figures. What several washes say is for {@code broodtide.fit}.
 *
 * <p>All types are immutable and may be shared between threads; values outside their range are
 * refused with {@link broodtide.measure.OutOfRange}.
 *
 * @since 0.2.0
 */
@NullMarked
package broodtide.wash;

import org.jspecify.annotations.NullMarked;
