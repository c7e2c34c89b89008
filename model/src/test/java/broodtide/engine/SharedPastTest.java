package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.fit.Invented;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Runs that go on from days played once are those that play them again, to the last bit. */
class SharedPastTest {
  private static final int COLONIES = 140;
  private static final LocalDate START = Invented.START;
  private static final ColonyModel MODEL = ColonyModel.in(Places.seasonal());
  private static final Scenario YEAR = new Scenario(MODEL, Plans.everything(START), START, 300);
  private static final Set<Quantity> ALL = EnumSet.allOf(Quantity.class);
  private static final Workers TWO = new Workers(2);

  @AfterAll
  static void close() {
    TWO.close();
  }

  /** Days before, within and after what every control does. */
  @ParameterizedTest
  @ValueSource(ints = {1, 50, 61, 79, 125, 146, 151, 163, 181, 250, 299})
  void goesOnWhereItWasLeft(int days) {
    SharedPast past = past(days);
    assertThat(past.begins(YEAR, members(), Watched.daily(ALL))).isTrue();
    same(EnsembleRun.of(YEAR, past, members(), Watched.daily(ALL), TWO, Progress.NONE));
  }

  @Test
  void isCarriedFurther() {
    Scenario longer = scenario(150);
    SharedPast past = past(40).upTo(longer, members(), TWO).upTo(scenario(151), members(), TWO);
    assertThat(past.days()).isEqualTo(151);
    same(EnsembleRun.of(YEAR, past, members(), Watched.daily(ALL), TWO, Progress.NONE));
  }

  @Test
  void somethingElseBeforeItsEndIsAnotherPast() {
    SharedPast past = past(100);
    List<SimulatedColony> others = members();
    others.set(7, others.get(7).sized(1.1));
    assertThat(past.begins(YEAR, others, Watched.daily(ALL))).isFalse();

    List<SimulatedColony> early = members();
    early.set(8, early.get(8).changing(List.of(new SeasonChange(START.plusDays(99), 1.2, 1))));
    assertThat(past.begins(YEAR, early, Watched.daily(ALL))).isFalse();
    List<SimulatedColony> late = members();
    late.set(8, late.get(8).changing(List.of(new SeasonChange(START.plusDays(100), 1.2, 1))));
    assertThat(past.begins(YEAR, late, Watched.daily(ALL))).isTrue();

    assertThat(past.begins(YEAR.with(Plan.waiting("wait")), members(), Watched.daily(ALL)))
        .isFalse();
    Scenario later = new Scenario(MODEL, Plans.everything(START), START.plusDays(-1), 300);
    assertThat(past.begins(later, members(), Watched.daily(ALL))).isFalse();
    assertThat(past.begins(scenario(100), members(), Watched.daily(ALL))).isFalse();
    assertThat(past.begins(YEAR, members().subList(0, 5), Watched.daily(ALL))).isFalse();
  }

  @Test
  void whatWasNotKeptIsNotThere() {
    SharedPast few =
        SharedPast.of(
            scenario(60), started(), members(), Watched.daily(Set.of(Quantity.ADULTS)), TWO);
    assertThat(few.begins(YEAR, members(), Watched.daily(Set.of(Quantity.ADULTS)))).isTrue();
    assertThat(few.begins(YEAR, members(), Watched.daily(Set.of(Quantity.MITES)))).isFalse();
  }

  private static void same(EnsembleRun run) {
    EnsembleRun whole =
        EnsembleRun.of(YEAR, started(), members(), Watched.daily(ALL), TWO, Progress.NONE);
    for (Quantity quantity : ALL) {
      for (int m = 0; m < COLONIES; m++) {
        assertThat(run.series(quantity, m))
            .as("%s of colony %d", quantity, m)
            .isEqualTo(whole.series(quantity, m));
      }
    }
  }

  private static SharedPast past(int days) {
    return SharedPast.of(scenario(days), started(), members(), Watched.daily(ALL), TWO);
  }

  private static Scenario scenario(int days) {
    List<Control> begun =
        YEAR.plan().controls().stream()
            .filter(c -> c.from().isBefore(START.plusDays(days)))
            .toList();
    return new Scenario(MODEL, new Plan("begun", begun), START, days);
  }

  private static StartedColonies started() {
    return StartedColonies.of(StandardColony.on(MODEL, START), members(), TWO);
  }

  private static List<SimulatedColony> members() {
    List<SimulatedColony> out = new ArrayList<>();
    for (int i = 0; i < COLONIES; i++) {
      SimulatedColony m =
          new SimulatedColony(
              0.6 + 0.005 * i,
              1.4 - 0.005 * i,
              0.002 * i * i,
              0.5 + 0.01 * i,
              0.03 * i,
              List.of(0.5 + 0.003 * i, 1.2 - 0.003 * i));
      out.add(
          i % 2 == 0
              ? m
              : m.changing(
                  List.of(
                      new SeasonChange(START.plusDays(45), 0.9, 2),
                      new SeasonChange(START.plusDays(170), 1.2, 0.5))));
    }
    return out;
  }

  @Test
  void whatIsKeptOnSomeDaysIsThatOfEveryDay() {
    LocalDate before = YEAR.start().plusDays(50);
    LocalDate after = YEAR.start().plusDays(90);
    Watched some =
        Watched.daily(Set.of(Quantity.ADULTS))
            .and(Quantity.INFESTED_WORKER_SHARE, Set.of(before, after));
    SharedPast past = SharedPast.of(scenario(60), started(), members(), some, TWO);
    assertThat(past.begins(YEAR, members(), some)).isTrue();
    assertThat(past.begins(YEAR, members(), Watched.daily(ALL))).isFalse();
    EnsembleRun run = EnsembleRun.of(YEAR, past, members(), some, TWO, Progress.NONE);
    EnsembleRun whole =
        EnsembleRun.of(YEAR, started(), members(), Watched.daily(ALL), TWO, Progress.NONE);
    for (LocalDate day : List.of(before, after)) {
      assertThat(run.values(Quantity.INFESTED_WORKER_SHARE, day))
          .isEqualTo(whole.values(Quantity.INFESTED_WORKER_SHARE, day));
    }
    assertThatThrownBy(() -> run.values(Quantity.INFESTED_WORKER_SHARE, before.plusDays(1)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("INFESTED_WORKER_SHARE was not kept on " + before.plusDays(1));
  }

  @Test
  void whatTwoKeepIsKeptByBothTogether() {
    LocalDate day = YEAR.start();
    Watched one = Watched.daily(Set.of(Quantity.ADULTS)).and(Quantity.MITES, Set.of(day));
    Watched other =
        Watched.daily(Set.of(Quantity.MITES)).and(Quantity.FORAGERS, Set.of(day.plusDays(1)));
    Watched both = one.with(other);
    assertThat(both.holds(one)).isTrue();
    assertThat(both.holds(other)).isTrue();
    assertThat(one.holds(other)).isFalse();
    assertThat(both.keeps(Quantity.FORAGERS, day)).isFalse();
    assertThat(both.keeps(Quantity.MITES, day.plusDays(200))).isTrue();
  }
}
