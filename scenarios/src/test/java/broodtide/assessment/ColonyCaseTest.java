package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.catalog.Catalog;
import broodtide.control.Control;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.control.Split;
import broodtide.engine.ColonyModel;
import broodtide.engine.Progress;
import broodtide.engine.Scenario;
import broodtide.engine.Workers;
import broodtide.fit.GrowthBias;
import broodtide.fit.Priors;
import broodtide.fit.SeasonBanks;
import broodtide.fit.SeasonPosterior;
import broodtide.measure.Unworkable;
import broodtide.wash.BoardCount;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What is known of one colony, changed in one thing at a time. */
class ColonyCaseTest {
  private static final ColonyModel MODEL = Shipped.model("temperate");
  private static final LocalDate START = LocalDate.of(2026, 5, 10);
  private static final LocalDate NOW = LocalDate.of(2026, 7, 9);
  private static final LocalDate UNTIL = LocalDate.of(2026, 12, 14);

  /** Winter bees are reared from 15 August to 5 October there. */
  private static final LocalDate RAISED = LocalDate.of(2026, 10, 5);

  private static ColonyCase of(
      ColonyModel model, LocalDate start, LocalDate now, LocalDate until, Control... given) {
    return new ColonyCase(
        "A",
        model,
        start,
        now,
        until,
        Invented.WASHES,
        List.of(given),
        Catalog.threshold("strange-sheppard-2001"),
        Priors.defaults());
  }

  private static ColonyCase usual(Control... given) {
    return of(MODEL, START, NOW, UNTIL, given);
  }

  private static MiticideCourse strips(LocalDate start) {
    return (MiticideCourse) Catalog.control("amitraz-strips").at(start);
  }

  @Test
  void aForecastEndsAfterItBegins() {
    assertThatThrownBy(() -> of(MODEL, START, NOW, NOW))
        .isInstanceOf(Unworkable.class)
        .hasMessage(
            "colony \"A\": the forecast must end after it begins; it begins on 2026-07-09 and ends"
                + " on 2026-07-09; give a later day with --until");
    assertThatThrownBy(() -> of(MODEL, START, START.minusDays(1), UNTIL))
        .hasMessageContaining("it begins on 2026-05-09 and ends on 2026-12-14");
    assertThat(of(MODEL, START, START, START.plusDays(1)).until()).isEqualTo("2026-05-11");
  }

  @Test
  void daysSpanTenYearsAtMost() {
    LocalDate last = START.plusDays(Scenario.LONGEST - 1);
    assertThat(of(MODEL, START, NOW, last).until()).isEqualTo(last);
    assertThatThrownBy(() -> of(MODEL, START, NOW, last.plusDays(1)))
        .isInstanceOf(Unworkable.class)
        .hasMessage(
            "colony \"A\": its record and the forecast run from 2026-05-10 to "
                + last.plusDays(1)
                + ", "
                + (Scenario.LONGEST + 1)
                + " days; expected "
                + Scenario.LONGEST
                + " (ten years); correct the year of its first wash or treatment, or leave out what"
                + " is older");
  }

  @Test
  void soManyMiticidesAtMost() {
    Control[] most =
        IntStream.range(0, SeasonPosterior.MOST_COURSES)
            .mapToObj(i -> strips(START.plusDays(i)))
            .toArray(Control[]::new);
    List<Control> more = new ArrayList<>(List.of(most));
    more.add(new Split("split", START, 0.3, 0.3, 0));
    assertThatCode(() -> usual(more.toArray(Control[]::new))).doesNotThrowAnyException();
    more.add(strips(START));
    assertThatThrownBy(() -> usual(more.toArray(Control[]::new)))
        .isInstanceOf(Unworkable.class)
        .hasMessage(
            "colony \"A\" was given "
                + (SeasonPosterior.MOST_COURSES + 1)
                + " treatments with miticides; expected "
                + SeasonPosterior.MOST_COURSES
                + ", for how well each worked is estimated; write one that was given several times"
                + " as one line with its applications, or leave out the oldest");
  }

  private static BoardCount board(LocalDate from, LocalDate out) {
    return new BoardCount(from, out, "A", 20);
  }

  @Test
  void boardsCountFromTheirFirstDayUpToTheDecision() {
    BoardCount late = board(NOW.minusDays(4), NOW);
    BoardCount early = board(START.minusDays(9), START.minusDays(2));
    BoardCount first = board(START.minusDays(12), START.minusDays(9));
    assertThat(usual().withBoards(List.of(late)).start()).isEqualTo(START);
    ColonyCase with = usual().withBoards(List.of(early, first, late));
    assertThat(with.start()).isEqualTo(START.minusDays(12));
    assertThat(with.boards()).containsExactly(early, first, late);
    assertThat(usual().boards()).isEmpty();
    assertThatThrownBy(() -> usual().withBoards(List.of(board(NOW, NOW.plusDays(1)))))
        .isInstanceOf(Unworkable.class)
        .hasMessage(
            "the board under colony \"A\" from 2026-07-09 to 2026-07-10 was taken out after the"
                + " decision date, 2026-07-09; decide on a later day, or take the row out");
  }

  @Test
  void boardsThatLayWhileAMiticideRanAreRefused() {
    LocalDate from = START.plusDays(3);
    MiticideCourse course = strips(from);
    ColonyCase c = usual(new Split("split", from, 0.3, 0.3, 0), course);
    LocalDate to = course.to();
    assertThat(to).isBefore(NOW.minusDays(1));
    assertThat(c.withBoards(List.of(board(from.minusDays(3), from.minusDays(1)))).boards())
        .hasSize(1);
    assertThat(c.withBoards(List.of(board(to.plusDays(1), to.plusDays(2)))).boards()).hasSize(1);
    for (BoardCount during : List.of(board(from.minusDays(3), from), board(to, to.plusDays(1)))) {
      assertThatThrownBy(() -> c.withBoards(List.of(during)))
          .isInstanceOf(Unworkable.class)
          .hasMessage(
              "the board under colony \"A\" from "
                  + during.from()
                  + " to "
                  + during.date()
                  + " lay while "
                  + course.name()
                  + " ran, from "
                  + from
                  + " to "
                  + to
                  + "; its mites speak of the treatment and not of the colony; take the row out");
    }
  }

  private static Map<String, Object> parts(ColonyCase c) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("colony", c.colony());
    out.put("yard", c.yard());
    out.put("model", c.model());
    out.put("start", c.start());
    out.put("now", c.now());
    out.put("until", c.until());
    out.put("washes", c.washes());
    out.put("given", c.given());
    out.put("thresholds", c.thresholds());
    out.put("priors", c.priors());
    out.put("boards", c.boards());
    return out;
  }

  /** All parts of the other are those of the case, but one. */
  private static void onlyDiffersIn(ColonyCase c, ColonyCase other, String part, Object value) {
    Map<String, Object> expected = parts(c);
    assertThat(expected.put(part, value)).as(part).isNotEqualTo(value);
    assertThat(parts(other)).isEqualTo(expected);
  }

  @Test
  void oneThingIsChangedAtATime() {
    Control first = strips(START);
    ColonyCase c =
        usual(first).withBoards(List.of(board(NOW.minusDays(2), NOW.minusDays(1)))).in("Ridge");
    assertThat(parts(c))
        .containsEntry("colony", "A")
        .containsEntry("yard", "Ridge")
        .containsEntry("model", MODEL)
        .containsEntry("start", START)
        .containsEntry("now", NOW)
        .containsEntry("until", UNTIL)
        .containsEntry("washes", Invented.WASHES)
        .containsEntry("given", List.of(first))
        .containsEntry("thresholds", Catalog.threshold("strange-sheppard-2001"))
        .containsEntry("priors", Priors.defaults());
    assertThat(usual().yard()).isEmpty();
    onlyDiffersIn(c, c.in("Brook"), "yard", "Brook");
    onlyDiffersIn(c, c.decidingOn(NOW.plusDays(5)), "now", NOW.plusDays(5));
    onlyDiffersIn(c, c.until(UNTIL.plusDays(5)), "until", UNTIL.plusDays(5));
    Priors other = Priors.defaults().with(new GrowthBias(-0.1, 0.1));
    onlyDiffersIn(c, c.with(other), "priors", other);
    ColonyModel boreal = Shipped.model("boreal");
    onlyDiffersIn(c, c.with(boreal), "model", boreal);
    Control second = strips(START.plusDays(20));
    onlyDiffersIn(c, c.withGiven(second), "given", List.of(first, second));
  }

  @Test
  void plansComeAfterWhatWasGiven() {
    Control first = strips(START);
    Control next = Catalog.control("thymol").at(NOW.plusDays(30));
    ColonyCase c = usual(first);
    Plan plan = new Plan("thymol", List.of(next));
    assertThat(c.withGiven(plan)).isEqualTo(new Plan("thymol", List.of(first, next)));
    Scenario season = c.season(plan);
    assertThat(season.plan()).isEqualTo(c.withGiven(plan));
    assertThat(season.model()).isEqualTo(MODEL);
    assertThat(season.start()).isEqualTo(START);
    assertThat(season.start().plusDays(season.days() - 1L)).as("its last day").isEqualTo(UNTIL);
  }

  /** The set speaks of April, August and October. */
  @Test
  void thresholdsHoldOnTheDaysOfTheirSource() {
    ColonyCase c = usual();
    assertThat(c.thresholdOn(LocalDate.of(2026, 10, 31))).contains(1.0);
    assertThat(c.thresholdOn(LocalDate.of(2026, 11, 1))).isEmpty();
    assertThat(c.hasThreshold()).isTrue();
    LocalDate october = LocalDate.of(2026, 10, 31);
    assertThat(of(MODEL, START, october, UNTIL).hasThreshold()).as("today alone").isTrue();
    assertThat(of(MODEL, START, october.plusDays(1), UNTIL).hasThreshold()).isFalse();
    LocalDate first = NOW;
    while (c.thresholdOn(first).isEmpty()) {
      first = first.plusDays(1);
    }
    assertThat(first).isAfter(NOW.plusDays(1));
    assertThat(c.until(first).hasThreshold()).as("the last day alone").isTrue();
    assertThat(c.until(first.minusDays(1)).hasThreshold()).isFalse();
  }

  @Test
  void winterBeesAreRaisedWithinTheForecast() {
    ColonyCase c = usual();
    LocalDate first = LocalDate.of(2026, 8, 15);
    assertThat(c.winterBeesRaised()).isEqualTo(RAISED);
    assertThat(c.until(RAISED).winterBeesRaised()).isEqualTo(RAISED);
    assertThat(c.until(RAISED.minusDays(1)).winterBeesRaised()).isEqualTo(RAISED.minusDays(1));
    assertThat(c.winterBroodDays())
        .isEqualTo(first.datesUntil(RAISED.plusDays(1)).toList())
        .hasSize(52);
    assertThat(c.raisesWinterBees()).isTrue();
    assertThat(c.until(first).winterBroodDays()).containsExactly(first);
    assertThat(c.until(first.minusDays(1)).raisesWinterBees()).isFalse();
    LocalDate september = LocalDate.of(2026, 9, 10);
    assertThat(c.decidingOn(september).winterBroodDays()).startsWith(september).hasSize(26);
    // within a fortnight of their end the bees of the winter after are meant
    ColonyCase nearly = of(MODEL, START, RAISED.minusDays(10), RAISED);
    assertThat(nearly.winterBroodDays()).isEmpty();
    assertThat(Outcome.WINTER_BROOD.word()).isEqualTo("winter-brood");
    assertThatThrownBy(() -> Outcome.WINTER_BROOD.check(nearly))
        .isInstanceOf(Unworkable.class)
        .hasMessage(
            "colony \"A\": no winter bees are raised from 2026-09-25 to 2026-10-05, so winter-bee"
                + " brood cannot be judged; look further ahead or choose another outcome");
    assertThatCode(() -> Outcome.WINTER_BROOD.check(c)).doesNotThrowAnyException();
    assertThatCode(() -> Outcome.LOST.check(nearly)).doesNotThrowAnyException();
  }

  @Test
  void winterIsJudgedByTheLowInSpring() {
    LocalDate low = usual().stages().springLow(MODEL, NOW).day();
    assertThat(low).isBetween(LocalDate.of(2027, 2, 1), LocalDate.of(2027, 5, 1));
    assertThat(usual().springLow()).isEmpty();
    assertThat(usual().until(low.minusDays(1)).springLow()).isEmpty();
    assertThat(usual().until(low).springLow().orElseThrow().day()).isEqualTo(low);
    assertThat(usual().throughWinter().until()).isEqualTo(low);
    ColonyCase later = usual().decidingOn(LocalDate.of(2026, 10, 20));
    assertThat(later.throughWinter().until()).isEqualTo(low);
    ColonyModel warm = Shipped.model("subtropical");
    ColonyCase subtropical = usual().with(warm);
    assertThat(subtropical.until(LocalDate.of(2027, 6, 1)).springLow()).isEmpty();
    assertThat(subtropical.throughWinter().until())
        .isEqualTo(subtropical.stages().winterBeesRaised(NOW));
    assertThat(usual().with(Shipped.model("boreal")).throughWinter().until())
        .isEqualTo(usual().with(Shipped.model("boreal")).winter().low().day())
        .isNotEqualTo(low);
  }

  /** Where ten years are full, the look ahead stays as it is. */
  @Test
  void aLookAheadStaysWithinTenYears() {
    LocalDate low = usual().throughWinter().until();
    LocalDate longest = low.minusDays(Scenario.LONGEST - 1);
    assertThat(of(MODEL, longest, NOW, UNTIL).throughWinter().until()).isEqualTo(low);
    ColonyCase full = of(MODEL, longest.minusDays(1), NOW, UNTIL);
    assertThat(full.throughWinter()).isSameAs(full);
  }

  /** A colony is read alone as among others that began like it. */
  @Test
  void aColonyIsReadByABank() {
    SeasonPosterior.SamplerSettings little = new SeasonPosterior.SamplerSettings(64, 1, 1);
    ColonyCase c = usual();
    try (Workers workers = new Workers(1)) {
      Scenario past = c.season(new Plan("done", List.of()));
      SeasonPosterior shared =
          new SeasonBanks(1)
              .posterior(past, c.washes(), List.of(), c.priors(), little, workers, Progress.NONE);
      assertThat(c.posterior(little, workers, Progress.NONE).members()).isEqualTo(shared.members());
    }
  }

  @Test
  void outcomesSayWhatTheyAre() {
    assertThat(Outcome.values())
        .extracting(Outcome::word)
        .containsExactly("infestation", "winter-brood", "lost");
    assertThat(Outcome.values()).extracting(Outcome::shownTimes).containsExactly(1, 100, 100);
    assertThat(Outcome.values()).extracting(Outcome::usualCost).containsExactly(1.0, 0.05, 0.02);
    assertThat(Outcome.INFESTATION.title()).contains("per 100 bees");
    assertThat(Outcome.WINTER_BROOD.title()).endsWith("%");
    assertThat(Outcome.LOST.title()).endsWith("%");
  }
}
