package broodtide.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.Invented;
import broodtide.assessment.Obstacles;
import broodtide.assessment.Outcome;
import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.Obstacle;
import broodtide.control.Plan;
import broodtide.control.QueenCaging;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import broodtide.results.ResultsFile;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class WindowSearchTest {
  private static final List<ControlTemplate> CONTROLS =
      Stream.of("formic-strips", "thymol", "oxalic-dribble").map(Catalog::control).toList();

  private static List<LocalDate> weekly(LocalDate from, int columns) {
    List<LocalDate> out = new ArrayList<>();
    for (int i = 0; i < columns; i++) {
      out.add(from.plusWeeks(i));
    }
    return out;
  }

  private static Windows search(ColonyCase c, List<LocalDate> starts, int threads) {
    try (Workers workers = new Workers(threads)) {
      SeasonPosterior posterior = Invented.posterior(c, 128, workers);
      return WindowSearch.of(
          c, posterior, CONTROLS, starts, Outcome.WINTER_BROOD, workers, Progress.NONE);
    }
  }

  private static String json(Windows windows) {
    ResultsFile file = new ResultsFile("windows", "test", 1, 128, List.of());
    file.add(windows);
    return file.text();
  }

  @Test
  void sameBytesOnOneThreadAndOnThree() {
    List<LocalDate> starts = weekly(Invented.NOW, 20);
    assertThat(json(search(Invented.colony(), starts, 3)))
        .isEqualTo(json(search(Invented.colony(), starts, 1)));
  }

  /** A cell holds what the plan gives when it is compared on its own. */
  @Test
  void cellsAgreeWithPlansPlayedAlone() {
    ColonyCase c = Invented.colony();
    LocalDate day = Invented.NOW.plusWeeks(5);
    Windows windows = search(c, List.of(Invented.NOW, day), 1);
    try (Workers workers = new Workers(1)) {
      Plan plan = new Plan("alone", List.of(Catalog.control("thymol").at(day)));
      Comparison alone =
          Comparison.of(
              c, Invented.posterior(c, 128, workers), List.of(plan), workers, Progress.NONE);
      assertThat(windows.rows().get(1).cells().get(1))
          .isInstanceOfSatisfying(
              Windows.Played.class,
              cell ->
                  assertThat(cell.byMember())
                      .containsExactly(alone.runs().get(0).winterBroodInfested()));
    }
  }

  /**
   * The temperate climate's supers stand until 31 July, its daily highs fall below 15 degrees in
   * October, and its queens stop laying on 30 October.
   */
  @Test
  void supersWarmthAndBroodRuleDaysOut() {
    LocalDate july = LocalDate.of(2026, 7, 15);
    LocalDate autumn = LocalDate.of(2026, 10, 20);
    LocalDate winter = LocalDate.of(2026, 12, 1);
    Windows windows = search(Invented.colony(), List.of(july, autumn, winter), 1);

    assertThat(kinds(windows, 0)).containsExactly("-", "-", "C");
    assertThat(kinds(windows, 1)).containsExactly("S", "C", "C");
    assertThat(kinds(windows, 2)).containsExactly("S", "B", "-");
  }

  /** Three weeks and a half of caging let all brood out: 24 days from egg to the last drone. */
  @Test
  void aCagedQueenLeavesNoBrood() {
    LocalDate caged = LocalDate.of(2026, 8, 20);
    ColonyCase c =
        Invented.colony(new QueenCaging("cage", Invented.NOW, Invented.NOW.plusDays(40)));
    ColonyCase open = Invented.colony();
    ControlTemplate dribble = Catalog.control("oxalic-vapour");
    assertThat(Obstacles.of(dribble, caged, open).orElseThrow().kind())
        .isEqualTo(Obstacle.Kind.BROOD);
    LocalDate still = Invented.NOW.plusDays(23);
    LocalDate out = Invented.NOW.plusDays(25);
    assertThat(Obstacles.cappedBrood(still, c.withGiven(Plan.waiting("w")), c.model().climate()))
        .isTrue();
    assertThat(Obstacles.cappedBrood(out, c.withGiven(Plan.waiting("w")), c.model().climate()))
        .isFalse();
  }

  @Test
  void theBestDayIsTheLowestAndItsStretchHoldsNineTenthsOfTheGain() {
    Windows windows = search(Invented.colony(), weekly(Invented.NOW, 20), 2);
    Windows.Row row = windows.best().orElseThrow();
    int best = row.best().orElseThrow();
    double least = row.middle(best).orElseThrow();
    for (Windows.Row other : windows.rows()) {
      for (int i = 0; i < windows.starts().size(); i++) {
        assertThat(other.middle(i).orElse(1.0)).isGreaterThanOrEqualTo(least);
      }
    }
    Windows.Stretch good = windows.asGood(row).orElseThrow();
    double gain = windows.ifYouWait() - least;
    for (int i = good.first(); i <= good.last(); i++) {
      assertThat(windows.ifYouWait() - row.middle(i).orElseThrow())
          .isGreaterThanOrEqualTo(0.9 * gain - 1e-12);
    }
    assertThat(windows.delay(row, best, 7).orElseThrow().mean()).isPositive();
    assertThat(windows.delay(row, best, 3)).isEmpty();
  }

  /** Worse in fewer than 80 of 100 colonies, or by less than the least difference, is a tie. */
  @Test
  void cellsAreTiedByTheRuleOfPlans() {
    Windows windows = search(Invented.colony(), weekly(Invented.NOW, 20), 2);
    Windows.Row first = windows.best().orElseThrow();
    double[] least = ((Windows.Played) first.cells().get(first.best().orElseThrow())).byMember();
    int tied = 0;
    int worse = 0;
    for (Windows.Row row : windows.rows()) {
      for (int i = 0; i < windows.starts().size(); i++) {
        if (row.cells().get(i) instanceof Windows.Played p) {
          double mean = 0;
          int higher = 0;
          for (int m = 0; m < least.length; m++) {
            mean += (p.byMember()[m] - least[m]) / least.length;
            higher += p.byMember()[m] > least[m] ? 1 : 0;
          }
          boolean clear = mean >= Outcome.WINTER_BROOD.usualCost() && higher >= 0.8 * least.length;
          assertThat(windows.tied(row, i)).as("%s %d", row.control().name(), i).isEqualTo(!clear);
          tied += clear ? 0 : 1;
          worse += clear ? 1 : 0;
        } else {
          assertThat(windows.tied(row, i)).isFalse();
        }
      }
    }
    assertThat(tied).isPositive();
    assertThat(worse).isPositive();
  }

  @Test
  void startsBeforeTheDecisionAreRefused() {
    LocalDate before = Invented.NOW.minusDays(1);
    assertThatThrownBy(() -> search(Invented.colony(), List.of(before), 1))
        .hasMessageContaining(before.toString())
        .hasMessageContaining("2026-07-09 to 2026-12-13");
  }

  /** Fewer colonies, each of them one of the sample: its first ones, whose order is random. */
  @Test
  void aThinnedSampleIsPartOfTheWhole() {
    try (Workers workers = new Workers(1)) {
      SeasonPosterior whole = Invented.posterior(Invented.colony(), 128, workers);
      SeasonPosterior part = whole.thinned(32);
      assertThat(part.members()).hasSize(32).isSubsetOf(whole.members());
      assertThat(part.members().get(31)).isEqualTo(whole.members().get(31));
      assertThat(whole.thinned(1000)).isSameAs(whole);
    }
  }

  private static List<String> kinds(Windows windows, int row) {
    return windows.rows().get(row).cells().stream()
        .map(
            cell ->
                cell instanceof Windows.Blocked b
                    ? String.valueOf(b.obstacle().kind().code())
                    : "-")
        .toList();
  }
}
