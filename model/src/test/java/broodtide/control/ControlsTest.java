package broodtide.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.measure.OutOfRange;
import broodtide.mite.StockTraits;
import java.time.LocalDate;
import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

class ControlsTest {
  private static final LocalDate DAY = LocalDate.of(2027, 7, 1);
  private static final Miticide ACID =
      new Miticide("acid", 3, 1.5, 0, 0, 0, 3, 25, Miticide.SupersRule.OFF);

  @Test
  void aCourseActsOnTheDaysOfItsApplications() {
    MiticideCourse course = new MiticideCourse("three", ACID, DAY, 3, 7);
    assertThat(course.to()).isEqualTo(DAY.plusDays(16));
    assertThat(course.actsOn(DAY.minusDays(1))).isFalse();
    assertThat(course.actsOn(DAY.plusDays(2))).isTrue();
    assertThat(course.actsOn(DAY.plusDays(3))).isFalse();
    assertThat(course.actsOn(DAY.plusDays(7))).isTrue();
    assertThat(course.actsOn(DAY.plusDays(16))).isTrue();
    assertThat(course.actsOn(DAY.plusDays(17))).isFalse();
    assertThat(MiticideCourse.once("one", ACID, DAY).to()).isEqualTo(DAY.plusDays(2));
  }

  @Test
  void broodBreaksMayNotOverlap() {
    QueenCaging cage = new QueenCaging("cage", DAY, DAY.plusDays(20));
    Split split = new Split("split", DAY.plusDays(20), 0.5, 0.5, 27);
    assertThatThrownBy(() -> new Plan("p", List.of(cage, split)))
        .hasMessageContaining("\"cage\" (2027-07-01 to 2027-07-21)")
        .hasMessageContaining("\"split\" (2027-07-21 to 2027-08-16)");
    Split later = new Split("split", DAY.plusDays(21), 0.5, 0.5, 27);
    Plan plan = new Plan("p", List.of(cage, later));
    assertThat(plan.broodBreakOn(DAY.plusDays(20))).isTrue();
    assertThat(plan.broodBreakOn(DAY.plusDays(48))).isFalse();
    assertThat(cage.daysWithoutLaying()).isEqualTo(21);
  }

  @Test
  void aSplitThatStopsNoLayingIsNoBroodBreakButNeedsAFreeQueen() {
    QueenCaging cage = new QueenCaging("c", DAY, DAY.plusDays(20));
    Split after = new Split("split", DAY.plusDays(21), 0.5, 0.5, 0);
    assertThat(new Plan("p", List.of(after, cage)).controls()).hasSize(2);
    Split during = new Split("split", DAY.plusDays(9), 0.5, 0.5, 0);
    assertThatThrownBy(() -> new Plan("p", List.of(during, cage)))
        .hasMessageContaining("the queen is caged by \"c\"");
  }

  @Test
  void aTrappingCombIsABroodBreakUntilItsFirstEgg() {
    TrappingComb trap = new TrappingComb("trap", DAY, 24, 12, 1);
    assertThat(trap.given()).isEqualTo(DAY.plusDays(24));
    assertThat(trap.to()).isEqualTo(DAY.plusDays(36));
    assertThat(trap.broodless()).contains(DAY.plusDays(36));
    Plan plan = new Plan("p", List.of(trap));
    assertThat(plan.broodBreakOn(DAY.plusDays(23))).isTrue();
    assertThat(plan.broodBreakOn(DAY.plusDays(24))).isFalse();
    refused("cagedDays", () -> new TrappingComb("trap", DAY, 14, 12, 1));
    refused("trappingDays", () -> new TrappingComb("trap", DAY, 24, 21, 1));
    Split during = new Split("split", DAY.plusDays(30), 0.5, 0.5, 0);
    assertThatThrownBy(() -> new Plan("p", List.of(during, trap)))
        .hasMessageContaining("the queen is caged by \"trap\"");
  }

  @Test
  void newStockTakesOverAsBeesAreReplaced() {
    Requeening queen = new Requeening("queen", DAY, new StockTraits(0.5, 1), 10);
    assertThat(queen.takenOver(DAY.plusDays(31))).isZero();
    assertThat(queen.takenOver(DAY.plusDays(52))).isEqualTo(0.5);
    assertThat(queen.takenOver(DAY.plusDays(400))).isEqualTo(1);
  }

  @Test
  void everyRecordRefusesWhatLiesOutsideItsRange() {
    refused("applications", () -> new MiticideCourse("x", ACID, DAY, 0, 7));
    refused("every", () -> new MiticideCourse("x", ACID, DAY, 2, 2));
    refused("onBees", () -> new Miticide("x", 3, -0.1, 0, 0, 0, 3, 25, Miticide.SupersRule.OFF));
    refused("inCells", () -> new Miticide("x", 3, 0, 21, 0, 0, 3, 25, Miticide.SupersRule.OFF));
    refused("warmest", () -> new Miticide("x", 3, 0, 0, 0, 0, 30, 25, Miticide.SupersRule.OFF));
    refused("days", () -> new Miticide("x", 0, 0, 0, 0, 0, 3, 25, Miticide.SupersRule.OFF));
    refused("broodCost", () -> new Miticide("x", 3, 0, 0, 0, 2, 3, 25, Miticide.SupersRule.OFF));
    refused(
        "beeCost", () -> new Miticide("x", 3, 0, 0, Double.NaN, 0, 3, 25, Miticide.SupersRule.OFF));
    refused("to", () -> new QueenCaging("x", DAY, DAY.minusDays(1)));
    refused("to", () -> new QueenCaging("x", DAY, DAY.plusDays(121)));
    refused("beesLeaving", () -> new Split("x", DAY, 0.96, 0, 0));
    refused("broodLeaving", () -> new Split("x", DAY, 0, 1.01, 0));
    refused("daysWithoutLaying", () -> new Split("x", DAY, 0, 0, 61));
    refused("daysWithoutLaying", () -> new Requeening("x", DAY, StockTraits.AVERAGE, -1));
    refused("taken", () -> new DroneCombRemoval("x", DAY, List.of(DAY.plusDays(9)), 1.1, 0.1));
    refused("droneShare", () -> new DroneCombRemoval("x", DAY, List.of(DAY.plusDays(9)), 1, 0.6));
    refused("cuts", () -> new DroneCombRemoval("x", DAY, List.of(), 1, 0.1));
    refused("cuts", () -> new DroneCombRemoval("x", DAY, List.of(DAY), 1, 0.1));
    refused("hygiene", () -> new StockTraits(1.2, 1));
  }

  private static void refused(String field, ThrowingCallable call) {
    assertThatThrownBy(call)
        .isInstanceOf(OutOfRange.class)
        .hasMessageStartingWith(field)
        .hasMessageContaining("expected");
  }
}
