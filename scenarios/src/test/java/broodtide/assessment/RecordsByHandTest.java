package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.assessment.HiveChance.Ranked;
import broodtide.assessment.HiveChance.Seasons;
import broodtide.catalog.Catalog;
import broodtide.control.Plan;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Rows of invented figures, put away and read again. */
class RecordsByHandTest {
  private static final ColonyCase COLONY = Invented.colony().in("Ridge");
  private static final LocalDate NOW = Invented.NOW;
  private static final LocalDate SPRING = LocalDate.of(2027, 3, 20);
  private static final short[] FIRST = {2, 0, 1};
  private static final short[] SECOND = {0, 1, 2};
  private static final QuantileSummary TODAY = new QuantileSummary(1, 2, 3, 4, 5);
  private static final QuantileSummary LATER = new QuantileSummary(6, 7, 8, 9, 10);

  private static Plan waiting() {
    return Plan.waiting("wait");
  }

  private static Plan treating(LocalDate day) {
    return new Plan("treat", List.of(Catalog.control("thymol").at(day)));
  }

  private static PlanSummary summary(Plan plan, double figure, boolean full) {
    return new PlanSummary(
        plan,
        full ? Optional.of(NOW.plusDays(30)) : Optional.empty(),
        figure,
        full ? OptionalDouble.of(figure / 2) : OptionalDouble.empty(),
        figure * 10,
        full ? 3 : 0,
        full ? 8 : 0,
        full ? Optional.of("thymol") : Optional.empty());
  }

  private static Decision decision(
      boolean told, boolean full, PlanSummary waiting, Optional<PlanRanking> ranking) {
    return new Decision(
        NOW,
        "invented",
        full ? OptionalDouble.of(3) : OptionalDouble.empty(),
        full ? OptionalDouble.of(0.4) : OptionalDouble.empty(),
        told,
        !told,
        told,
        waiting,
        ranking);
  }

  private static HiveChance over(String what, short[] ranks) {
    Counted.Over counted =
        new Counted.Over(new double[] {1, 0.25, 0.5}, new boolean[] {true, false, true});
    return new HiveChance("A", "Ridge", 0.4, List.of(new Ranked(what, 0.64, ranks)), counted);
  }

  private static HiveLoss loss(double own, float least, Ranked... shared) {
    Counted.Lost counted =
        Counted.Lost.of(
            COLONY.winter().survival(),
            NOW,
            SPRING,
            new float[] {20_000, 15_000, 9_000},
            new float[] {least, 5_000, 3_000});
    return new HiveLoss(new HiveChance("A", "Ridge", own, List.of(shared), counted), 1000 * own);
  }

  private static HiveRow row(
      Decision decision,
      Optional<WashGain> wash,
      Optional<HiveChance> over,
      Map<String, HiveLoss> lost) {
    return new HiveRow(
        "A",
        HiveRow.lastWash(COLONY),
        HiveRow.lastBoard(COLONY),
        TODAY,
        LocalDate.of(2026, 10, 5),
        LATER,
        decision,
        NextCount.of(COLONY.washes(), NOW),
        wash,
        over,
        lost);
  }

  private static HiveRow full(Plan waiting, Plan treat) {
    return row(
        decision(
            true,
            true,
            summary(waiting, 0.5, false),
            Optional.of(
                new PlanRanking(
                    summary(treat, 0.2, true),
                    List.of(summary(treat, 0.21, true), summary(waiting, 0.5, false))))),
        Optional.of(new WashGain(0.01, 0.25)),
        Optional.of(over("growth", FIRST)),
        Map.of(
            "wait",
            loss(0.5, 7_000, new Ranked("growth", 0.64, FIRST), new Ranked("late", 0.75, SECOND)),
            "treat",
            loss(0.2, 8_000, new Ranked("late", 0.75, SECOND))));
  }

  private static HiveRow read(HiveRecords records, HiveRow row, Plan... laid) {
    byte[] bytes = HiveRecords.bytes(row);
    return records.row(COLONY, List.of(laid), () -> bytes);
  }

  private static void same(HiveRow a, HiveRow b) {
    assertThat(b.hive()).isEqualTo(a.hive());
    assertThat(b.lastCount()).isEqualTo(a.lastCount()).isPresent();
    assertThat(b.lastBoard()).isEqualTo(a.lastBoard());
    assertThat(b.infestation()).isEqualTo(a.infestation());
    assertThat(b.judgedOn()).isEqualTo(a.judgedOn());
    assertThat(b.judged()).isEqualTo(a.judged());
    assertThat(b.decision()).isEqualTo(a.decision());
    assertThat(b.nextCount()).isEqualTo(a.nextCount());
    assertThat(b.wash()).isEqualTo(a.wash());
    assertThat(b.over().isPresent()).isEqualTo(a.over().isPresent());
    if (a.over().isPresent()) {
      same(a.over().get(), b.over().orElseThrow());
    }
    assertThat(b.lost().keySet()).isEqualTo(a.lost().keySet());
    for (String plan : a.lost().keySet()) {
      HiveLoss before = Objects.requireNonNull(a.lost().get(plan));
      HiveLoss after = Objects.requireNonNull(b.lost().get(plan));
      assertThat(after.mites()).isEqualTo(before.mites());
      same(before.chance(), after.chance());
    }
  }

  private static void same(HiveChance a, HiveChance b) {
    assertThat(b.colony()).isEqualTo(a.colony());
    assertThat(b.yard()).isEqualTo(a.yard());
    assertThat(b.chance()).isEqualTo(a.chance());
    assertThat(b.shared()).isEqualTo(a.shared());
    assertThat(b.seasons().ranks()).hasSameSizeAs(a.seasons().ranks());
    for (int i = 0; i < a.seasons().ranks().size(); i++) {
      assertThat(b.seasons().ranks().get(i)).containsExactly(a.seasons().ranks().get(i));
    }
    if (a.seasons().counted() instanceof Counted.Over before) {
      Counted.Over after = (Counted.Over) b.seasons().counted();
      assertThat(after.living()).containsExactly(before.living());
      assertThat(after.over()).containsExactly(before.over());
    } else {
      Counted.Lost before = (Counted.Lost) a.seasons().counted();
      Counted.Lost after = (Counted.Lost) b.seasons().counted();
      assertThat(after.from()).isEqualTo(before.from());
      assertThat(after.day()).isEqualTo(before.day());
      assertThat(after.then()).containsExactly(before.then());
      assertThat(after.least()).containsExactly(before.least());
      assertThat(after.survival()).isSameAs(before.survival());
    }
  }

  @Test
  void aRowOfAllPartsIsTheSame() {
    HiveRow row = full(waiting(), treating(NOW.plusDays(30)));
    same(row, read(new HiveRecords(), row, treating(NOW.plusDays(30)), waiting()));
  }

  /** Parts that may be missing, and whatever can be no. */
  @Test
  void aRowOfFewPartsIsTheSame() {
    HiveRow few =
        row(
            decision(false, false, summary(waiting(), 0.5, false), Optional.empty()),
            Optional.empty(),
            Optional.empty(),
            Map.of());
    same(few, read(new HiveRecords(), few, waiting()));
    PlanSummary some =
        new PlanSummary(
            waiting(), Optional.of(NOW), 0.5, OptionalDouble.empty(), 5, 1, 2, Optional.empty());
    HiveRow other =
        row(
            decision(true, false, some, Optional.of(new PlanRanking(some, List.of()))),
            Optional.of(new WashGain(0, 0)),
            Optional.empty(),
            Map.of("wait", loss(0.5, 7_000)));
    same(other, read(new HiveRecords(), other, waiting()));
  }

  /** Names in the order of the alphabet, so that the same row gives the same bytes. */
  @Test
  void theSameRowGivesTheSameBytes() {
    byte[] bytes = HiveRecords.bytes(full(waiting(), treating(NOW.plusDays(30))));
    for (int i = 0; i < 9; i++) {
      assertThat(HiveRecords.bytes(full(waiting(), treating(NOW.plusDays(30))))).isEqualTo(bytes);
    }
  }

  /** Ranks that several counts ask for are written once: a length, and two bytes for each. */
  @Test
  void ranksThatAreAlikeAreWrittenOnce() {
    int alike = length(FIRST.clone());
    assertThat(length(SECOND) - alike).isEqualTo(4 + 3 * 2);
  }

  private static int length(short[] ranks) {
    return HiveRecords.bytes(
            row(
                decision(true, true, summary(waiting(), 0.5, false), Optional.empty()),
                Optional.empty(),
                Optional.of(over("growth", FIRST)),
                Map.of("wait", loss(0.5, 7_000, new Ranked("growth", 0.64, ranks)))))
        .length;
  }

  /** What is alike in many rows is held once, and only that. */
  @Test
  void alikePartsAreHeldOnce() {
    LocalDate day = NOW.plusDays(30);
    HiveRecords records = new HiveRecords();
    HiveRow row = full(waiting(), treating(day));
    HiveRow a = read(records, row, waiting(), treating(day));
    HiveRow b = read(records, row, waiting(), treating(day));
    assertThat(b.decision().best().plan()).isSameAs(a.decision().best().plan());
    assertThat(b.over().orElseThrow().shared()).isSameAs(a.over().orElseThrow().shared());
    HiveRow later = read(records, row, waiting(), treating(day.plusDays(1)));
    assertThat(later.decision().best().plan()).isEqualTo(treating(day.plusDays(1)));
    Plan other = new Plan("treat", List.of(Catalog.control("formic-slow").at(day)));
    assertThat(read(records, row, waiting(), other).decision().best().plan()).isEqualTo(other);
    Plan longer =
        new Plan(
            "treat",
            List.of(
                Catalog.control("thymol")
                    .at(day)
                    .course()
                    .orElseThrow()
                    .repeated(5, 30)
                    .orElseThrow()));
    assertThat(longer.controls().get(0).name()).isEqualTo(treating(day).controls().get(0).name());
    assertThat(read(records, row, waiting(), longer).decision().best().plan()).isEqualTo(longer);
  }

  @Test
  void aPlanThatWasNotLaidIsNoRecord() {
    HiveRow row = full(waiting(), treating(NOW.plusDays(30)));
    assertThatThrownBy(() -> read(new HiveRecords(), row, waiting()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("no plan \"treat\" was laid");
    HiveChance unknown = new HiveChance("A", "", 0.5, List.of(), (w, b, o) -> 0.5);
    HiveRow strange =
        row(
            decision(true, true, summary(waiting(), 0.5, false), Optional.empty()),
            Optional.empty(),
            Optional.of(unknown),
            Map.of());
    assertThatThrownBy(() -> HiveRecords.bytes(strange))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("no record is made of a ");
  }

  /** Each count reads the record anew, so that nothing of it is held. */
  @Test
  void countsReadTheRecordAnew() {
    HiveRow row = full(waiting(), treating(NOW.plusDays(30)));
    byte[] bytes = HiveRecords.bytes(row);
    int[] asked = {0};
    HiveRow read =
        new HiveRecords()
            .row(
                COLONY,
                List.of(waiting(), treating(NOW.plusDays(30))),
                () -> {
                  asked[0]++;
                  return bytes;
                });
    assertThat(asked[0]).isEqualTo(1);
    Seasons once = read.over().orElseThrow().seasons();
    Seasons twice = read.over().orElseThrow().seasons();
    assertThat(asked[0]).isEqualTo(3);
    assertThat(twice).isNotSameAs(once);
  }
}
