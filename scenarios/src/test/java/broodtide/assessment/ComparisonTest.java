package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.catalog.Catalog;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.control.QueenCaging;
import broodtide.control.Split;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import java.time.LocalDate;
import java.util.List;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;

class ComparisonTest {
  private static final LocalDate AUGUST = LocalDate.of(2026, 8, 6);

  private static Comparison play(Plan... plans) {
    try (Workers workers = new Workers(2)) {
      ColonyCase c = Invented.colony();
      return Comparison.of(
          c, Invented.posterior(c, 128, workers), List.of(plans), workers, Progress.NONE);
    }
  }

  /** Two measures that each help are together no worse than either, colony by colony. */
  @Test
  void twoHelpfulMeasuresAreNeverWorseThanOne() {
    Control comb = Catalog.control("drone-comb-part").at(Invented.NOW);
    Control thymol = Catalog.control("thymol").at(AUGUST);
    Comparison played =
        play(
            Plan.waiting("wait"),
            new Plan("comb", List.of(comb)),
            new Plan("thymol", List.of(thymol)),
            new Plan("both", List.of(comb, thymol)));
    double[] both = played.runs().get(3).winterBroodInfested();
    for (int one = 1; one <= 2; one++) {
      double[] alone = played.runs().get(one).winterBroodInfested();
      assertThat(Difference.of(alone, played.runs().get(0).winterBroodInfested()).mean())
          .as("helps by itself")
          .isNegative();
      for (int m = 0; m < both.length; m++) {
        assertThat(both[m]).isLessThanOrEqualTo(alone[m] + 1e-12);
      }
    }
  }

  /**
   * A treatment has the same luck alone, beside another, and in whatever order they are written.
   */
  @Test
  void theOrderInWhichAPlanIsWrittenMakesNoDifference() {
    Control formic = Catalog.control("formic-strips").at(AUGUST);
    Control dribble = Catalog.control("oxalic-dribble").at(AUGUST.plusDays(60));
    Comparison played =
        play(
            new Plan("formic", List.of(formic)),
            new Plan("dribble", List.of(dribble)),
            new Plan("formic first", List.of(formic, dribble)),
            new Plan("dribble first", List.of(dribble, formic)));
    LocalDate before = AUGUST.plusDays(59);
    assertThat(played.runs().get(2).infestation(before))
        .containsExactly(played.runs().get(0).infestation(before));
    LocalDate after = AUGUST.plusDays(70);
    assertThat(played.runs().get(3).infestation(after))
        .containsExactly(played.runs().get(2).infestation(after));
    double[] both = played.runs().get(2).infestation(after);
    for (int one = 0; one <= 1; one++) {
      double[] alone = played.runs().get(one).infestation(after);
      for (int m = 0; m < both.length; m++) {
        assertThat(both[m]).isLessThanOrEqualTo(alone[m] + 1e-4);
      }
    }
  }

  @Test
  void aPlanThatCannotRunIsNamedAndTheRestGoesOn() {
    Control early = Catalog.control("thymol").at(Invented.START.minusDays(3));
    Comparison played =
        play(Plan.waiting("wait"), new Plan("too early", List.of(early)), Plan.waiting("again"));
    assertThat(played.runs()).extracting(r -> r.plan().name()).containsExactly("wait", "again");
    assertThat(played.refused())
        .singleElement()
        .satisfies(r -> assertThat(r.plan()).isEqualTo("too early"))
        .satisfies(r -> assertThat(r.reason()).contains("2026-05-07", early.name()));
  }

  @Test
  void aQueenInHerCageIsNotSplitFrom() {
    QueenCaging cage = new QueenCaging("cage", AUGUST, AUGUST.plusDays(20));
    Split split = new Split("nucleus", AUGUST.plusDays(5), 0.3, 0.3, 0);
    Assertions.assertThatThrownBy(() -> new Plan("p", List.of(cage, split)))
        .hasMessageContaining("caged")
        .hasMessageContaining("nucleus")
        .hasMessageContaining("2026-08-11");
  }

  @Test
  void whatLiesBeforeTheDecisionIsSaid() {
    Control past = Catalog.control("formic-strips").at(Invented.NOW.minusDays(2));
    Comparison played = play(Plan.waiting("wait"), new Plan("past", List.of(past)));
    assertThat(played.runs()).hasSize(1);
    assertThat(played.refused())
        .singleElement()
        .satisfies(
            r -> assertThat(r.reason()).contains("2026-07-07", "before the day of decision"));
  }

  /** Against waiting: mean, ties and signs, by hand. */
  @Test
  void differences() {
    Difference d = Difference.of(new double[] {1, 2, 3, 3}, new double[] {2, 2, 5, 1});
    assertThat(d.mean()).isCloseTo(-0.25, within(1e-12));
    assertThat(d.chanceSmaller()).isCloseTo(0.625, within(1e-12));
    assertThat(d.band().median()).isCloseTo(-0.5, within(1e-12));
  }
}
