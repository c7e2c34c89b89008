package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.control.Plan;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** The order of a sheet, its sums, and which hives need a count. */
class ApiarySheetTest {
  private static final LocalDate NOW = LocalDate.of(2025, 8, 3);

  @Test
  void hivesThatAreProbablyOverComeFirstThenThoseOfHigherLoss() {
    ApiarySheet sheet =
        ApiarySheet.of(
            List.of(
                row("calm", 0.02, 0.2, true),
                row("doomed, not over", 0.4, 0.9, true),
                row("over", 0.6, 0.3, true),
                row("over and worse", 0.5, 0.7, true),
                row("b", 0.02, 0.2, true)));
    assertThat(sheet.rows())
        .extracting(HiveRow::hive)
        .containsExactly("over and worse", "over", "doomed, not over", "b", "calm");
    ApiaryCount count = sheet.over().orElseThrow();
    assertThat(count.mean()).isCloseTo(1.54, within(1e-9));
    assertThat(count.hives()).isEqualTo(5);
  }

  @Test
  void whereLossesAreNotKnownTheHigherInfestationComesFirst() {
    HiveRow few = row("few", 0.1, 0.9, false);
    HiveRow many = withJudged(row("many", 0.1, 0.1, false), 40);
    assertThat(ApiarySheet.of(List.of(few, many)).rows()).containsExactly(many, few);
    assertThat(few.winterLoss()).isEmpty();
    assertThat(few.gain()).isEmpty();
  }

  @Test
  void gainIsTheLossThatTheBestPlanSaves() {
    HiveRow row = row("a", 0.6, 0.5, true);
    PlanSummary best = plan("treat", 0.2);
    Decision d = row.decision();
    Decision laid =
        new Decision(
            d.date(),
            d.thresholdSet(),
            d.threshold(),
            d.overThresholdToday(),
            true,
            true,
            true,
            d.waiting(),
            Optional.of(new PlanRanking(best, List.of())));
    HiveRow planned =
        new HiveRow(
            "a",
            row.lastCount(),
            row.lastBoard(),
            row.infestation(),
            row.judgedOn(),
            row.judged(),
            laid,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Map.of());
    assertThat(row.gain()).isEmpty();
    assertThat(planned.gain().orElseThrow()).isCloseTo(0.3, within(1e-9));
    assertThat(planned.winterLossWithBest()).hasValue(0.2);
  }

  @Test
  void onePlanIsGivenToNoneToThoseOverOrToAll() {
    ApiarySheet sheet =
        ApiarySheet.of(List.of(row("calm", 0.02, 0.2, true), row("over", 0.6, 0.3, true)));
    List<ApiaryPlan> plans = sheet.together(Optional.of("treat"));
    assertThat(plans).extracting(ApiaryPlan::treated).containsExactly(0, 1, 2);
    assertThat(plans)
        .extracting(p -> Math.round(1000 * p.lost().mean()))
        .containsExactly(500L, 350L, 250L);
    assertThat(plans)
        .extracting(p -> Math.round(1000 * p.saved().mean()))
        .containsExactly(0L, 150L, 250L);
    assertThat(plans)
        .extracting(p -> Math.round(p.mitesInLost()))
        .containsExactly(500L, 350L, 250L);
    assertThat(sheet.together(Optional.empty())).as("no plan does anything").isEmpty();
    ApiarySheet unknown = ApiarySheet.of(List.of(row("a", 0.02, 0.2, false)));
    assertThat(unknown.together(Optional.of("treat"))).isEmpty();
  }

  @Test
  void aHiveNeedsACountWhereThereIsNoneAnOldOneOrOneAlone() {
    assertThat(NextCount.of(List.of(), NOW))
        .contains(new NextCount(NextCount.Reason.NO_COUNT, NOW));
    assertThat(NextCount.of(counts(43, 90), NOW))
        .contains(new NextCount(NextCount.Reason.OLD_COUNT, NOW));
    assertThat(NextCount.of(counts(42, 90), NOW)).isEmpty();
    assertThat(NextCount.of(counts(1), NOW))
        .contains(new NextCount(NextCount.Reason.ONE_DAY, NOW.plusDays(27)));
    assertThat(NextCount.of(counts(1, 1), NOW))
        .as("two counts of one day say nothing of growth")
        .contains(new NextCount(NextCount.Reason.ONE_DAY, NOW.plusDays(27)));
    assertThat(NextCount.of(counts(35), NOW))
        .as("not before today")
        .contains(new NextCount(NextCount.Reason.ONE_DAY, NOW));
  }

  @Test
  void reasonsHaveTheirWords() {
    assertThat(NextCount.Reason.values())
        .extracting(NextCount.Reason::id)
        .containsExactly("no-count", "old-count", "one-day");
  }

  @Test
  void hivesAreWashedByWhatThatGains() {
    ApiarySheet sheet =
        ApiarySheet.of(
            List.of(
                washed("hardly", 0.0019), washed("fair", 0.01), washed("most", 0.03), withNone()));
    assertThat(sheet.washNext()).extracting(HiveRow::hive).containsExactly("most", "fair");
    assertThat(sheet.knowsWashes()).isTrue();
    assertThat(ApiarySheet.of(List.of(withNone())).knowsWashes()).isFalse();
  }

  private static final LocalDate LATE = LocalDate.of(2025, 8, 20);

  private static PlanSummary begins(String name, LocalDate day, double loss) {
    return new PlanSummary(
        Plan.waiting(name),
        Optional.of(day),
        loss,
        OptionalDouble.of(0.1),
        5,
        1,
        0,
        Optional.of(name));
  }

  /** A hive with plans laid. */
  private static HiveRow laid(
      String hive, double over, boolean known, PlanSummary best, PlanSummary... tied) {
    HiveRow r = row(hive, over, 0.4, known);
    Decision d = r.decision();
    Decision ranked =
        new Decision(
            d.date(),
            d.thresholdSet(),
            d.threshold(),
            d.overThresholdToday(),
            known,
            known,
            true,
            d.waiting(),
            Optional.of(new PlanRanking(best, List.of(tied))));
    return with(r, r.judged(), ranked, r.wash());
  }

  /** The same row but for three of its parts. */
  private static HiveRow with(
      HiveRow r, QuantileSummary judged, Decision decision, Optional<WashGain> wash) {
    return new HiveRow(
        r.hive(),
        r.lastCount(),
        r.lastBoard(),
        r.infestation(),
        r.judgedOn(),
        judged,
        decision,
        r.nextCount(),
        wash,
        r.over(),
        r.lost());
  }

  /** The best of most hives first; those that are level with a best come once for each hive. */
  @Test
  void plansAreCountedByTheHivesThatTheyAreBestFor() {
    PlanSummary treat = begins("treat", NOW, 0.1);
    PlanSummary late = begins("late", LATE, 0.1);
    PlanSummary never = begins("comb", LATE.plusDays(9), 0.1);
    PlanSummary wait = plan("wait", 0.4);
    ApiarySheet sheet =
        ApiarySheet.of(
            List.of(
                laid("a", 0.1, true, late, never, treat),
                laid("b", 0.1, true, treat),
                laid("c", 0.1, true, treat, wait),
                laid("d", 0.1, true, wait)));
    // treat 2 of 4 and level once, late once, comb level once
    assertThat(sheet.plans())
        .containsExactly(
            Map.entry("treat", NOW), Map.entry("late", LATE), Map.entry("comb", LATE.plusDays(9)));
    assertThat(sheet.named())
        .extracting(Plan::name)
        .containsExactly("late", "comb", "treat", "treat", "treat", "wait", "wait");
    assertThat(sheet.plansLaid()).isTrue();
    assertThat(ApiarySheet.of(List.of(withNone())).plansLaid()).isFalse();
    assertThat(ApiarySheet.of(List.of(withNone())).plans()).isEmpty();
    assertThat(sheet.date()).isEqualTo(NOW);
    assertThat(sheet.judgedOn()).isEqualTo(LocalDate.of(2025, 9, 30));
    assertThat(sheet.threshold()).hasValue(3);
  }

  /** One hive for which a plan is best outweighs any for which it is level. */
  @Test
  void bestOutweighsLevel() {
    PlanSummary treat = begins("treat", NOW, 0.1);
    PlanSummary late = begins("late", LATE, 0.1);
    List<HiveRow> hives =
        List.of(
            laid("a", 0.1, true, plan("wait", 0.4), treat),
            laid("b", 0.1, true, plan("wait", 0.4), treat),
            laid("c", 0.1, true, late));
    assertThat(ApiarySheet.of(hives).plans().keySet()).containsExactly("late", "treat");
  }

  @Test
  void thePlanOfMostHivesIsGivenToAll() {
    PlanSummary treat = begins("treat", NOW, 0.1);
    List<HiveRow> calm =
        List.of(laid("a", 0.1, true, treat), laid("b", 0.2, true, plan("wait", 0.4)));
    List<ApiaryPlan> none = ApiarySheet.of(calm).together(Optional.empty());
    assertThat(none).extracting(ApiaryPlan::plan).containsOnly("treat");
    assertThat(none)
        .as("no hive is over")
        .extracting(ApiaryPlan::whom)
        .containsExactly(ApiaryPlan.Whom.NONE, ApiaryPlan.Whom.ALL);
    assertThat(none).extracting(p -> p.whom().id()).containsExactly("none", "all");
    assertThat(ApiarySheet.of(calm).together(Optional.of("not laid")))
        .as("no hive can carry it out")
        .extracting(ApiaryPlan::plan)
        .containsExactly("treat", "treat");
    List<ApiaryPlan> over =
        ApiarySheet.of(List.of(laid("a", 0.5, true, treat), laid("b", 0.9, true, treat)))
            .together(Optional.empty());
    assertThat(over)
        .as("all are over")
        .extracting(ApiaryPlan::whom)
        .containsExactly(ApiaryPlan.Whom.NONE, ApiaryPlan.Whom.ALL);
    assertThat(ApiaryPlan.Whom.THOSE_OVER.id()).isEqualTo("those-over");
    ApiarySheet half =
        ApiarySheet.of(List.of(laid("a", 0.5, true, treat), laid("b", 0.1, false, treat)));
    assertThat(half.together(Optional.empty())).as("losses of one are not known").isEmpty();
    assertThat(half.knowsWinterLoss()).as("those of the other are").isTrue();
    assertThat(ApiarySheet.of(List.of(laid("b", 0.1, false, treat))).knowsWinterLoss()).isFalse();
  }

  /** Hives whose losses are not known count in none of the figures. */
  @Test
  void hivesOfUnknownLossAreNotCounted() {
    ApiaryPlan plan =
        ApiaryPlan.of(
            ApiaryPlan.Whom.ALL,
            "treat",
            List.of(row("a", 0.1, 0.4, true), row("b", 0.1, 0.4, false)));
    assertThat(plan.treated()).isEqualTo(1);
    assertThat(plan.lost().hives()).isEqualTo(1);
    assertThat(plan.mitesInLost()).isCloseTo(200, within(1e-9));
    assertThatThrownBy(() -> ApiarySheet.of(List.of()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a sheet has no hives; give it at least one");
    HiveRow r = row("a", 0.1, 0.4, true);
    HiveRow without =
        new HiveRow(
            "b",
            r.lastCount(),
            r.lastBoard(),
            r.infestation(),
            r.judgedOn(),
            r.judged(),
            r.decision(),
            r.nextCount(),
            r.wash(),
            Optional.empty(),
            r.lost());
    assertThat(ApiarySheet.of(List.of(r, without)).over()).as("one has no threshold").isEmpty();
    assertThat(new WashGain(0.002, 0.1).worthIt()).isTrue();
  }

  private static HiveRow withNone() {
    return row("unknown", 0.6, 0.5, true);
  }

  private static HiveRow washed(String hive, double gain) {
    HiveRow r = row(hive, 0.1, 0.3, true);
    return with(r, r.judged(), r.decision(), Optional.of(new WashGain(gain, 0.2)));
  }

  private static List<Wash> counts(int... daysAgo) {
    return Arrays.stream(daysAgo).mapToObj(d -> Wash.of(NOW.minusDays(d), "a", 2, 300)).toList();
  }

  private static HiveRow withJudged(HiveRow r, double level) {
    return with(r, band(level), r.decision(), r.wash());
  }

  private static HiveRow row(String hive, double over, double loss, boolean known) {
    Decision decision =
        new Decision(
            NOW,
            "invented",
            OptionalDouble.of(3),
            OptionalDouble.of(over),
            known,
            known,
            true,
            plan("wait", loss),
            Optional.empty());
    return new HiveRow(
        hive,
        Optional.of(Wash.of(NOW.minusDays(1), hive, 3, 300)),
        Optional.empty(),
        band(1),
        LocalDate.of(2025, 9, 30),
        band(5),
        decision,
        Optional.empty(),
        Optional.empty(),
        Optional.of(chance(hive, over)),
        known ? Map.of("wait", lost(hive, loss), "treat", lost(hive, loss / 2)) : Map.of());
  }

  private static HiveLoss lost(String hive, double chance) {
    return new HiveLoss(chance(hive, chance), 1000 * chance);
  }

  /** A hive that shares nothing with its neighbours. */
  private static HiveChance chance(String hive, double own) {
    return new HiveChance(hive, "", own, List.of(), (weights, bees, others) -> own);
  }

  private static PlanSummary plan(String name, double loss) {
    return new PlanSummary(
        Plan.waiting(name),
        Optional.empty(),
        loss,
        OptionalDouble.of(0.1),
        5,
        0,
        0,
        Optional.empty());
  }

  private static QuantileSummary band(double middle) {
    return new QuantileSummary(middle / 4, middle / 2, middle, 2 * middle, 4 * middle);
  }
}
