package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.catalog.Catalog;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.engine.Survival;
import broodtide.engine.Watched;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.wash.BoardCount;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Which plan comes first, and which hive, from figures that are given. */
class RankingByHandTest {
  private static final LocalDate NOW = LocalDate.of(2026, 8, 3);

  private static final ColonyCase COLONY = Invented.colony();

  /** One colony on one day; nothing is read from it. */
  private static EnsembleRun day;

  @BeforeAll
  static void play() {
    try (Workers workers = new Workers(1)) {
      day =
          EnsembleRun.of(
              new Scenario(COLONY.model(), Plan.waiting("wait"), COLONY.start(), 1),
              StandardColony.on(COLONY.model(), COLONY.start()),
              List.of(SimulatedColony.average(1)),
              Watched.daily(Set.of(Quantity.INFESTATION)),
              workers,
              Progress.NONE);
    }
  }

  private final Map<String, PlanSummary> summaries = new HashMap<>();
  private final Map<String, double[]> losses = new HashMap<>();
  private final List<String> names = new ArrayList<>();

  private void plan(
      String name, double brood, int courses, int supers, String last, double... losses) {
    names.add(name);
    this.losses.put(name, losses);
    summaries.put(
        name,
        new PlanSummary(
            Plan.waiting(name),
            Optional.empty(),
            Arrays.stream(losses).average().orElseThrow(),
            brood < 0 ? OptionalDouble.empty() : OptionalDouble.of(brood),
            1,
            courses,
            supers,
            last.isEmpty() ? Optional.empty() : Optional.of(last)));
  }

  private PlanRanking ranked(String usedLast) {
    List<PlanRun> runs =
        names.stream().map(n -> new PlanRun(COLONY, Plan.waiting(n), day, List.of())).toList();
    return PlanRanking.of(
        runs,
        r -> summaries.get(r.plan().name()),
        r -> losses.get(r.plan().name()),
        usedLast.isEmpty() ? Optional.empty() : Optional.of(usedLast));
  }

  private static List<String> tied(PlanRanking ranking) {
    return ranking.tied().stream().map(s -> s.plan().name()).toList();
  }

  /** Worse is who loses two more in a hundred, and loses more in eight seasons of ten. */
  @Test
  void onlyWhatIsClearlyWorseIsBehind() {
    plan("even", 0, 1, 0, "", 0.10, 0.10, 0.10, 0.10, 0.10);
    plan("lowest", 0, 2, 0, "", 0.09, 0.09, 0.09, 0.09, 0.09);
    plan("higher in four of five", 0, 1, 0, "", 0.12, 0.12, 0.12, 0.12, 0.09);
    plan("higher in three of five", 0, 1, 0, "", 0.3, 0.3, 0.3, 0.09, 0.09);
    plan("higher by less", 0, 1, 0, "", 0.109, 0.109, 0.109, 0.109, 0.109);
    PlanRanking ranking = ranked("");
    // of those that are level the first of one course, not the lowest, which has two
    assertThat(ranking.best().plan().name()).isEqualTo("even");
    assertThat(tied(ranking))
        .containsExactly("lowest", "higher in three of five", "higher by less");
  }

  @Test
  void higherIsByTheMeanAndByTheSeasons() {
    double[] low = {0.1, 0.1, 0.1, 0.1, 0.1};
    assertThat(PlanRanking.clearlyHigher(new double[] {0.2, 0.2, 0.2, 0.2, 0.1}, low, 0.08))
        .isTrue();
    assertThat(PlanRanking.clearlyHigher(new double[] {0.2, 0.2, 0.2, 0.1, 0.1}, low, 0.05))
        .isFalse();
    assertThat(PlanRanking.clearlyHigher(new double[] {0.2, 0.2, 0.2, 0.2, 0.1}, low, 0.081))
        .isFalse();
    double[] quarter = {0.25, 0.25};
    assertThat(PlanRanking.clearlyHigher(new double[] {0.5, 0.5}, quarter, 0.25)).isTrue();
  }

  /** Less infested winter brood, then fewer courses, no supers, and another means than last. */
  @Test
  void amongLevelPlansOneThingAfterTheOther() {
    plan("infested", 0.05, 0, 0, "", 0.1, 0.1);
    plan("two courses", 0.03, 2, 0, "", 0.1, 0.1);
    plan("on supers", 0.03, 1, 4, "", 0.1, 0.1);
    plan("same again", 0.035, 1, 0, "thymol", 0.1, 0.1);
    plan("other", 0.039, 1, 0, "oxalic", 0.1, 0.1);
    plan("third", 0.039, 1, 0, "formic", 0.1, 0.1);
    PlanRanking ranking = ranked("thymol");
    assertThat(ranking.best().plan().name()).isEqualTo("other");
    assertThat(tied(ranking))
        .containsExactly("infested", "two courses", "on supers", "same again", "third");
    assertThat(ranked("").best().plan().name()).isEqualTo("same again");
    names.remove("same again");
    names.remove("other");
    names.remove("third");
    assertThat(ranked("thymol").best().plan().name()).isEqualTo("on supers");
    names.remove("on supers");
    assertThat(ranked("thymol").best().plan().name()).isEqualTo("two courses");
  }

  /** Brood that is not told counts as none, and a hundredth apart is level. */
  @Test
  void broodThatIsNotToldIsNone() {
    plan("told", 0.009, 0, 0, "", 0.1, 0.1);
    plan("not told", -1, 1, 0, "", 0.1, 0.1);
    assertThat(ranked("").best().plan().name()).isEqualTo("told");
    plan("more", 0.02, 0, 0, "", 0.1, 0.1);
    names.remove("told");
    assertThat(ranked("").best().plan().name()).isEqualTo("not told");
  }

  private Decision decision(Optional<PlanRanking> ranking, boolean told, boolean reaches) {
    return new Decision(
        NOW,
        "invented",
        OptionalDouble.of(3),
        OptionalDouble.of(0.4),
        told,
        reaches,
        true,
        Objects.requireNonNull(summaries.get("wait")),
        ranking);
  }

  @Test
  void aDecisionNamesTheBestAndWhatIsLevel() {
    plan("wait", 0.1, 0, 0, "", 0.3, 0.3);
    plan("best", 0.0, 1, 0, "", 0.1, 0.1);
    plan("level", 0.0, 2, 0, "", 0.1, 0.1);
    PlanRanking ranking = ranked("");
    Decision laid = decision(Optional.of(ranking), true, true);
    assertThat(laid.best().plan().name()).isEqualTo("best");
    assertThat(laid.tied()).containsExactly("level");
    assertThat(laid.named().map(Plan::name)).containsExactly("best", "level");
    Decision alone = decision(Optional.empty(), true, true);
    assertThat(alone.best().plan().name()).isEqualTo("wait");
    assertThat(alone.tied()).isEmpty();
    assertThat(alone.named().map(Plan::name)).containsExactly("wait");
    assertThat(alone.knowsWinterLoss()).isTrue();
    assertThat(decision(Optional.empty(), false, true).knowsWinterLoss()).isFalse();
    assertThat(decision(Optional.empty(), true, false).knowsWinterLoss()).isFalse();
  }

  /** A colony is over where a wash of it would show more than the threshold. */
  @Test
  void overIsWhatAWashWouldShow() {
    double at = Decision.infestationAt(3);
    assertThat(at * PlanRun.SHOWN_BY_A_WASH).isCloseTo(3, within(1e-12));
    assertThat(Decision.over(at * 1.001, 3)).isTrue();
    assertThat(Decision.over(at * 0.999, 3)).isFalse();
    assertThat(Decision.over(0, 0)).isFalse();
  }

  @Test
  void hivesAreOrderedByWhatIsMostUrgent() {
    HiveUrgency a = new HiveUrgency(true, 0.1, 5, "a");
    assertThat(a.compareTo(new HiveUrgency(false, 0.9, 50, "0"))).isNegative();
    assertThat(a.compareTo(new HiveUrgency(true, 0.2, 1, "z"))).isPositive();
    assertThat(a.compareTo(new HiveUrgency(true, 0.1, 6, "z"))).isPositive();
    assertThat(a.compareTo(new HiveUrgency(true, 0.1, 5, "b"))).isNegative();
    assertThat(a).isEqualTo(new HiveUrgency(true, 0.1, 5, "a"));
    assertThat(a).hasSameHashCodeAs(new HiveUrgency(true, 0.1, 5, "a"));
    assertThat(a).isNotEqualTo(new HiveUrgency(true, 0.1, 5, "b")).isNotEqualTo("a");
    assertThat(a.hashCode()).isNotEqualTo(new HiveUrgency(true, 0.1, 5, "b").hashCode());
  }

  private static ColonyCase counted(List<Wash> washes, BoardCount... boards) {
    ColonyCase washed =
        new ColonyCase(
            "A",
            COLONY.model(),
            COLONY.start(),
            NOW,
            COLONY.until(),
            washes,
            List.of(),
            Catalog.threshold("kulhanek-2021"),
            Priors.defaults());
    return boards.length == 0 ? washed : washed.withBoards(List.of(boards));
  }

  @Test
  void theLastCountIsThatOfTheLastDay() {
    Wash early = Wash.of(LocalDate.of(2026, 6, 10), "A", 5, 310);
    Wash late = Wash.of(LocalDate.of(2026, 7, 8), "A", 9, 295);
    BoardCount before = new BoardCount(late.date().minusDays(5), late.date(), "A", 30);
    BoardCount after = new BoardCount(late.date(), late.date().plusDays(3), "A", 40);
    assertThat(HiveRow.lastWash(counted(List.of(late, early)))).contains(late);
    assertThat(HiveRow.lastWash(counted(List.of()))).isEmpty();
    assertThat(HiveRow.lastBoard(counted(List.of(early, late), before))).isEmpty();
    assertThat(HiveRow.lastBoard(counted(List.of(early, late), before, after))).contains(after);
    assertThat(HiveRow.lastBoard(counted(List.of(), before))).contains(before);
  }

  /** Alive is who had enough bees on every day so far, and was spared by all else. */
  @Test
  void lifeGoesByTheFewestBeesSoFar() {
    ColonyModel model = Shipped.model("temperate");
    LocalDate start = LocalDate.of(2026, 9, 1);
    Scenario season = new Scenario(model, Plan.waiting("wait"), start, 60);
    Survival survival = Survival.in(model);
    try (Workers workers = new Workers(1)) {
      EnsembleRun run =
          EnsembleRun.of(
              season,
              StandardColony.on(model, start),
              List.of(
                  SimulatedColony.average(1),
                  new SimulatedColony(0.4, 0.3, 30, 1, 1, List.of()),
                  new SimulatedColony(2, 0.5, 0, 1, 1, List.of())),
              Watched.daily(Set.of(Quantity.ADULTS)),
              workers,
              Progress.NONE);
      LocalDate from = start.plusDays(10);
      LifeChances chances = new LifeChances(survival, run, from);
      for (int day : new int[] {30, 10, 12, 60, 31, 11, 3, 0, 60}) {
        LocalDate on = start.plusDays(Math.max(10, day));
        double spared = day <= 10 ? 1 : survival.spared(from, on);
        for (int m = 0; m < 3; m++) {
          double least = Double.POSITIVE_INFINITY;
          for (int d = 10; d <= Math.max(10, day); d++) {
            least = Math.min(least, run.values(Quantity.ADULTS, start.plusDays(d))[m]);
          }
          assertThat((double) chances.on(day)[m])
              .as("colony %d on day %d", m, day)
              .isCloseTo(survival.enough(least) * spared, within(1e-6));
        }
      }
    }
  }
}
