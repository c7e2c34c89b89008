package broodtide.fit;

import broodtide.wash.Interval;
import java.time.LocalDate;

/**
 * A fitted line of growth on one day.
 *
 * @param date the day
 * @param perHundred what the line says of it, mites per 100 adult bees
 * @param interval interval of the line by profile likelihood, mites per 100 adult bees; an end may
 *     be infinite
 */
public record GrowthPoint(LocalDate date, double perHundred, Interval interval) {}
