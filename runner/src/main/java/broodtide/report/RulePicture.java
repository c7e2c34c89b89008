package broodtide.report;

import broodtide.assessment.QuantileSummary;
import broodtide.chart.Figure;
import broodtide.chart.Heading;
import broodtide.chart.Range;
import broodtide.chart.RuleTradeoff;
import broodtide.decision.RuleResult;
import broodtide.decision.RuleTrial;
import java.util.List;

/** Rules for treating: what each loses and how often it treats. */
public final class RulePicture {
  private RulePicture() {}

  /**
   * {@return the picture}
   *
   * @param trial the rules as they were played for a colony
   */
  public static Figure of(RuleTrial trial) {
    List<RuleTradeoff.Rule> rules = trial.results().stream().map(RulePicture::rule).toList();
    String title =
        rules.size() == 1
            ? "How often \u201c" + rules.get(0).name() + "\u201d treats, and what it loses"
            : "What each rule loses, and how often it treats for that";
    return RuleTradeoff.of(
        new Heading(
            title, "Colony " + trial.colony().colony() + ". Dots: means; bars: 90 % intervals."),
        rules);
  }

  private static RuleTradeoff.Rule rule(RuleResult r) {
    return new RuleTradeoff.Rule(
        r.rule().name(),
        RuleResult.mean(r.treatments()),
        range(r.treatments()),
        RuleResult.mean(r.lost()),
        range(r.lost()),
        RuleResult.shareWithAny(r.misses()),
        RuleResult.shareWithAny(r.needless()));
  }

  private static Range range(double[] byMember) {
    QuantileSummary s = QuantileSummary.of(byMember);
    return new Range(s.q05(), s.q95());
  }
}
