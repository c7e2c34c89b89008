package broodtide.catalog;

import java.time.LocalDate;

/**
 * A day on which a beekeeper does something to the hive for a control. Immutable.
 *
 * @param day the day
 * @param deed what is done, in a few words without the name of the control
 */
public record HiveVisit(LocalDate day, String deed) {}
