package broodtide.decision;

import broodtide.assessment.PlanRun;
import broodtide.assessment.QuantileSummary;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;

/**
 * How a rule fared in every member's season. Whether a colony stands over the threshold is judged
 * by what a wash of it would show on average, against the threshold of the day. What is counted by
 * member counts as much as the member is likely to be alive.
 *
 * @param rule the rule
 * @param treatments treatments begun, by member
 * @param misses wash days on which a colony was over the threshold and not treated, by member; not
 *     a number when there is no threshold on any of them
 * @param needless treatments begun while a colony was not over the threshold, by member; not a
 *     number when there was no threshold on the day of any
 * @param blocked wash days on which the rule asked for a treatment that could not be begun, by
 *     member
 * @param lost chance of loss by member, see {@link PlanRun#losses()}
 * @param infestation mites per 100 bees when the winter bees have been raised, by member
 * @param winterBrood share of worker brood with a mite while winter bees are raised, by member; not
 *     a number when none are
 * @param raised weight of each member as a living colony when the winter bees have been raised
 * @param days what happened on each wash day
 * @param objections what stands against its treatments in the calendar
 */
@SuppressWarnings("ArrayRecordComponent") // thousands of figures, read only, never compared
public record RuleResult(
    Rule rule,
    double[] treatments,
    double[] misses,
    double[] needless,
    double[] blocked,
    double[] lost,
    double[] infestation,
    double[] winterBrood,
    double[] raised,
    List<WashDay> days,
    List<String> objections) {
  /**
   * One wash day, as shares of all members.
   *
   * @param day the day
   * @param over living colonies that are over the threshold in truth; like missed and needless not
   *     a number when there is no threshold on the day
   * @param treated colonies in which the rule begins a treatment on the next day
   * @param missed colonies over the threshold that are neither treated then nor treated lately
   * @param needless colonies that are treated although they are not over the threshold
   */
  public record WashDay(
      LocalDate day, double over, double treated, double missed, double needless) {}

  /** Copies the lists. */
  public RuleResult {
    days = List.copyOf(days);
    objections = List.copyOf(objections);
  }

  /** {@return infestation of colonies that are alive when the winter bees have been raised} */
  public QuantileSummary infestationOfLiving() {
    return QuantileSummary.of(infestation, raised);
  }

  /** {@return infested winter-bee brood of colonies that are alive when it has been raised} */
  public QuantileSummary winterBroodOfLiving() {
    return QuantileSummary.of(winterBrood, raised);
  }

  /**
   * {@return mean over the members}
   *
   * @param byMember figures by member
   */
  public static double mean(double[] byMember) {
    return Arrays.stream(byMember).average().orElse(Double.NaN);
  }

  /**
   * {@return share of members with one or more; not a number when that is not known}
   *
   * @param byMember figures by member
   */
  public static double shareWithAny(double[] byMember) {
    if (Arrays.stream(byMember).anyMatch(Double::isNaN)) {
      return Double.NaN;
    }
    return Arrays.stream(byMember).map(v -> Math.min(1, v)).sum() / byMember.length;
  }
}
