package broodtide.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Invented;
import broodtide.assessment.QuantileSummary;
import broodtide.catalog.Catalog;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.engine.DailyEngine;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.Trajectory;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class TreatmentCheckTest {
  private static final LocalDate TREATED = LocalDate.of(2026, 8, 3);
  private static final MiticideCourse STRIPS =
      (MiticideCourse) Catalog.control("amitraz-strips").at(TREATED);

  /** Washes of 300 bees that show just what they should of a colony in which it acted so. */
  private static ColonyCase washed(double success, double infestation, LocalDate... days) {
    ColonyCase c = Invented.colony();
    Scenario season =
        new Scenario(c.model(), new Plan("treated", List.of(STRIPS)), Invented.START, 200);
    Trajectory truth =
        DailyEngine.run(season, new SimulatedColony(1, 1, infestation, 1, 1, List.of(success)));
    List<Wash> washes = new ArrayList<>();
    for (LocalDate day : days) {
      double mites = 300 * 0.9 * truth.at(Quantity.INFESTATION, day) / 100;
      washes.add(Wash.of(day, "A", (int) Math.round(mites), 300));
    }
    LocalDate now = days[days.length - 1].plusDays(1);
    return new ColonyCase(
        "A",
        c.model(),
        days[0],
        now,
        now.plusDays(1),
        washes,
        List.of(),
        c.thresholds(),
        c.priors());
  }

  private static TreatmentCheck judge(ColonyCase c) {
    try (Workers workers = new Workers(2)) {
      return TreatmentCheck.of(
          c, STRIPS, new SeasonPosterior.SamplerSettings(512, 3, 1), workers, Progress.NONE);
    }
  }

  private static final LocalDate[] OFTEN = {
    LocalDate.of(2026, 6, 1),
    LocalDate.of(2026, 7, 1),
    LocalDate.of(2026, 8, 1),
    LocalDate.of(2026, 8, 25),
    LocalDate.of(2026, 9, 10),
    LocalDate.of(2026, 10, 5)
  };

  /** With half as many mites the chance lies at .9, which is just what the verdict asks for. */
  @Test
  void aTreatmentThatActedAsUsualIsSeenToHaveWorked() {
    TreatmentCheck check = judge(washed(1, 6, OFTEN));
    assertThat(check.verdict()).isEqualTo(TreatmentCheck.Verdict.WORKED);
    assertThat(QuantileSummary.of(check.reduction()).q05()).isGreaterThan(0.5);
    assertThat(check.before().date()).isEqualTo("2026-08-01");
    assertThat(check.after().date()).isEqualTo("2026-10-05");
  }

  @Test
  void aTreatmentThatHardlyActedIsSeenToHaveFallenShortAndResistanceComesLast() {
    TreatmentCheck check = judge(washed(0.03, 1.5, OFTEN));
    assertThat(check.verdict()).isEqualTo(TreatmentCheck.Verdict.FELL_SHORT);
    List<String> reasons = Shortfall.reasons(check, Catalog.control("amitraz-strips"));
    assertThat(reasons).hasSizeGreaterThan(4);
    assertThat(reasons.get(reasons.size() - 1)).contains("resistance", "one possibility");
    assertThat(reasons.subList(0, reasons.size() - 1)).noneMatch(r -> r.contains("resistance"));
  }

  @Test
  void twoWashesWithHardlyAMiteCannotTell() {
    TreatmentCheck check =
        judge(washed(0.3, 0.1, LocalDate.of(2026, 8, 1), LocalDate.of(2026, 8, 30)));
    assertThat(check.verdict()).isEqualTo(TreatmentCheck.Verdict.CANNOT_TELL);
    assertThat(Shortfall.doubts(check))
        .anySatisfy(d -> assertThat(d).contains("before the treatment was over"))
        .anySatisfy(d -> assertThat(d).contains("too few"));
  }

  /**
   * What one hive cannot tell, eight that were treated together can; one does not speak for all.
   */
  @Test
  void hivesOfAnApiaryTellTogether() {
    LocalDate[] two = {LocalDate.of(2026, 8, 1), LocalDate.of(2026, 10, 5)};
    TreatmentCheck good = judge(washed(1, 0.5, two));
    TreatmentCheck poor = judge(washed(0.1, 0.5, two));
    ApiaryTreatmentCheck worked =
        ApiaryTreatmentCheck.of(Collections.nCopies(8, good)).orElseThrow();
    ApiaryTreatmentCheck fell = ApiaryTreatmentCheck.of(Collections.nCopies(8, poor)).orElseThrow();
    assertThat(worked.verdict()).isEqualTo(TreatmentCheck.Verdict.WORKED);
    assertThat(fell.verdict()).isEqualTo(TreatmentCheck.Verdict.FELL_SHORT);
    assertThat(worked.chanceWorked()).isGreaterThan(good.chanceWorked());
    assertThat(fell.chanceWorked()).isLessThan(poor.chanceWorked());
    assertThat(worked.high() / worked.low())
        .as("hives differ among themselves, so the range stays wide")
        .isGreaterThan(1.3);
    assertThat(ApiaryTreatmentCheck.of(List.of(good))).isEmpty();
  }

  /** Hives without a mite before or after say nothing and do not count. */
  @Test
  void hivesWithoutAMiteDoNotCount() {
    TreatmentCheck none =
        judge(washed(1, 0.001, LocalDate.of(2026, 8, 1), LocalDate.of(2026, 10, 5)));
    assertThat(none.noMites()).isTrue();
    assertThat(ApiaryTreatmentCheck.of(Collections.nCopies(8, none))).isEmpty();
  }

  /** A wash later than the one that judges it counts for it just as well. */
  @Test
  void aFurtherWashThatCountsIsReadToo() {
    LocalDate[] two = {LocalDate.of(2026, 8, 1), LocalDate.of(2026, 9, 30)};
    LocalDate[] three = {two[0], two[1], LocalDate.of(2026, 10, 20)};
    TreatmentCheck fewer = judge(washed(1, 1.5, two));
    TreatmentCheck more = judge(washed(1, 1.5, three));
    assertThat(more.after()).isEqualTo(fewer.after());
    assertThat(more.colony().washes()).hasSize(3);
    assertThat(more.chanceWorked()).isNotEqualTo(fewer.chanceWorked());
  }

  @Test
  void withoutAWashBeforeOrAfterItIsRefused() {
    assertThatThrownBy(() -> judge(washed(1, 1, LocalDate.of(2026, 8, 10))))
        .hasMessageContaining("2026-08-03")
        .hasMessageContaining("2026-08-10");
    assertThatThrownBy(() -> judge(washed(1, 1, LocalDate.of(2026, 8, 1))))
        .hasMessageContaining("no wash after 2026-08-03");
  }
}
