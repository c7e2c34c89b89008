package broodtide.results;

import java.util.OptionalInt;

/**
 * How sure a count is.
 *
 * @param rightToWithin half the width of its 90 % range as a share of the rate
 * @param beesForAQuarter bees that a wash needs to be right to within a quarter
 * @param hivesToWash hives to wash for the mean of an apiary, within a quarter; empty when that was
 *     not asked
 */
public record CountPrecision(double rightToWithin, int beesForAQuarter, OptionalInt hivesToWash) {}
