package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.catalog.Catalog;
import broodtide.catalog.Surroundings;
import broodtide.control.Control;
import broodtide.engine.StandardColony;
import broodtide.fit.Prior;
import broodtide.fit.Priors;
import broodtide.fit.Unknown;
import broodtide.measure.OutOfRange;
import broodtide.measure.Unworkable;
import broodtide.mite.StockTraits;
import broodtide.season.Climate;
import broodtide.season.DailyHighs;
import broodtide.season.YearSpan;
import broodtide.study.ColonyStart;
import broodtide.study.Studies;
import broodtide.study.Study;
import broodtide.study.TreatmentFile;
import broodtide.study.WashFile;
import broodtide.wash.BoardCount;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Cases of studies, of tables with boards, and of an apiary in one folder. */
class StudyCasesTest {
  private static final LocalDate START = LocalDate.of(2025, 6, 1);
  private static final LocalDate UNTIL = LocalDate.of(2026, 4, 15);
  private static final Optional<LocalDate> NONE = Optional.empty();
  private static final Control SPLIT = Catalog.control("split").at(LocalDate.of(2025, 6, 5));
  private static final Control THYMOL = Catalog.control("thymol").at(LocalDate.of(2025, 8, 1));

  private static ColonyStart colony(OptionalDouble infestation) {
    return colony(OptionalDouble.empty(), infestation, 1, new StockTraits(0, 1));
  }

  private static ColonyStart colony(
      OptionalDouble adults, OptionalDouble infestation, double strength, StockTraits stock) {
    return new ColonyStart(
        "A", adults, OptionalDouble.empty(), infestation, strength, stock, "Ridge");
  }

  private static Study study(ColonyStart colony, List<Control> given, String... resistant) {
    return study(Catalog.climate("temperate"), colony, given, resistant);
  }

  private static Study study(
      Climate climate, ColonyStart colony, List<Control> given, String... resistant) {
    Study s = Studies.named("late-wash");
    return new Study(
        "invented",
        climate,
        false,
        START,
        UNTIL,
        colony,
        s.surroundings(),
        s.immigration(),
        s.washes(),
        given,
        s.plans(),
        s.thresholds(),
        s.bees(),
        s.mites(),
        DailyHighs.NONE,
        List.of(resistant));
  }

  private static ColonyCase of(
      Study study,
      Map<String, List<Wash>> washes,
      List<BoardCount> boards,
      List<Control> further,
      Optional<LocalDate> now,
      Optional<LocalDate> until) {
    return ColonyCases.ofStudy(study, Place.of(study), washes, boards, further, now, until);
  }

  private static Wash wash(LocalDate day) {
    return Wash.of(day, "A", 3, 300);
  }

  private static Map<String, List<Wash>> washes(LocalDate... days) {
    Map<String, List<Wash>> out = new TreeMap<>();
    List<Wash> own = new ArrayList<>();
    for (LocalDate day : days) {
      own.add(wash(day));
    }
    out.put("A", own);
    return out;
  }

  private static final Study KNOWN = study(colony(OptionalDouble.of(2)), List.of(SPLIT));
  private static final Study UNKNOWN = study(colony(OptionalDouble.empty()), List.of(SPLIT));

  @Test
  void aStudyIsDecidedOnTheDayAfterWhatIsKnown() {
    LocalDate july = LocalDate.of(2025, 7, 10);
    ColonyCase c = of(UNKNOWN, washes(START, july), List.of(), List.of(), NONE, NONE);
    assertThat(c.colony()).isEqualTo("A");
    assertThat(c.yard()).isEqualTo("Ridge");
    assertThat(c.start()).isEqualTo(START);
    assertThat(c.now()).isEqualTo(july.plusDays(1));
    assertThat(c.until()).isEqualTo(UNTIL);
    assertThat(c.washes()).containsExactly(wash(START), wash(july));
    assertThat(c.given()).containsExactly(SPLIT);
    assertThat(c.model()).isEqualTo(UNKNOWN.model());
    assertThat(c.thresholds()).isEqualTo(UNKNOWN.thresholds().value());
    assertThat(of(KNOWN, Map.of(), List.of(), List.of(), NONE, NONE).now())
        .as("nothing was counted")
        .isEqualTo(START);
    ColonyCase further = of(UNKNOWN, washes(START, july), List.of(), List.of(THYMOL), NONE, NONE);
    assertThat(further.now()).isEqualTo(LocalDate.of(2025, 8, 2));
    assertThat(further.given()).containsExactly(SPLIT, THYMOL);
    LocalDate named = LocalDate.of(2025, 9, 1);
    ColonyCase on =
        of(
            UNKNOWN,
            washes(july),
            List.of(),
            List.of(),
            Optional.of(named),
            Optional.of(named.plusDays(9)));
    assertThat(on.now()).isEqualTo(named);
    assertThat(on.until()).isEqualTo(named.plusDays(9));
    Study warm =
        study(Catalog.climate("subtropical"), colony(OptionalDouble.of(2)), List.of(SPLIT));
    assertThat(of(warm, Map.of(), List.of(), List.of(), NONE, NONE).until())
        .as("after October nothing is believed there")
        .isEqualTo(LocalDate.of(2025, 10, 31));
  }

  @Test
  void aStudyNeedsCountsOrAnInfestation() {
    BoardCount board = new BoardCount(START, START.plusDays(3), "A", 9);
    BoardCount other = new BoardCount(START, START.plusDays(3), "B", 9);
    assertThat(of(UNKNOWN, Map.of(), List.of(other, board), List.of(), NONE, NONE).washes())
        .isEmpty();
    assertThatThrownBy(() -> of(UNKNOWN, Map.of(), List.of(other), List.of(), NONE, NONE))
        .isInstanceOf(Unworkable.class)
        .hasMessage(
            "the study \"invented\" has no counts of colony \"A\" and no infestation; give one of"
                + " them");
    Map<String, List<Wash>> others = new LinkedHashMap<>();
    others.put("B", List.of(Wash.of(START, "B", 1, 300)));
    others.put("Cedar", List.of());
    assertThatThrownBy(() -> of(UNKNOWN, others, List.of(), List.of(), NONE, NONE))
        .hasMessage(
            "the study \"invented\" has no counts of colony \"A\" and no infestation; give one of"
                + " them; the table of washes has B, Cedar");
    Map<String, List<Wash>> alike = Map.of("a", List.of(Wash.of(START, "a", 1, 300)));
    assertThatThrownBy(() -> of(UNKNOWN, alike, List.of(), List.of(), NONE, NONE))
        .hasMessageStartingWith(
            "the study \"invented\" has no counts of colony \"A\" and no infestation; give one of"
                + " them; the table of washes has a. ")
        .hasMessageContaining("the table of washes", "the study");
  }

  @Test
  void daysOfAStudyFollowOneAnother() {
    assertThatThrownBy(
            () -> of(UNKNOWN, washes(START.minusDays(1)), List.of(), List.of(), NONE, NONE))
        .isInstanceOf(OutOfRange.class)
        .hasMessage(
            "date of the first wash of colony \"A\" is 2025-05-31; expected the study's start,"
                + " 2025-06-01, or later; set \"start\" of the study to an earlier day or take the"
                + " wash out");
    Control early = Catalog.control("thymol").at(START.minusDays(2));
    assertThatThrownBy(() -> of(KNOWN, Map.of(), List.of(), List.of(THYMOL, early), NONE, NONE))
        .isInstanceOf(OutOfRange.class)
        .hasMessage(
            "--given is 2025-05-30; expected treatments from the study's start, 2025-06-01,"
                + " onwards; what the study says of the colony holds on that day");
    Control first = Catalog.control("thymol").at(START);
    assertThat(of(KNOWN, Map.of(), List.of(), List.of(first), NONE, NONE).start()).isEqualTo(START);
    LocalDate july = LocalDate.of(2025, 7, 10);
    Optional<LocalDate> before = Optional.of(july.minusDays(1));
    assertThatThrownBy(() -> of(UNKNOWN, washes(START, july), List.of(), List.of(), before, NONE))
        .hasMessageContaining("2025-07-10 or later, the day of the last wash of colony \"A\"");
    assertThatThrownBy(
            () -> of(KNOWN, Map.of(), List.of(), List.of(), Optional.of(START.plusDays(3)), NONE))
        .as("what the study gave")
        .hasMessageContaining("the day on which colony \"A\" was given " + SPLIT.name());
    assertThat(of(KNOWN, Map.of(), List.of(), List.of(), Optional.of(SPLIT.from()), NONE).now())
        .isEqualTo(SPLIT.from());
    assertThatThrownBy(() -> of(KNOWN, Map.of(), List.of(), List.of(), NONE, Optional.of(START)))
        .hasMessageStartingWith("--until is 2025-06-01; expected a day after 2025-06-01");
    Optional<LocalDate> late = Optional.of(UNTIL.plusDays(5));
    assertThatThrownBy(() -> of(KNOWN, Map.of(), List.of(), List.of(), late, NONE))
        .hasMessageStartingWith("\"until\" of the study is 2026-04-15");
    Optional<LocalDate> most = Optional.of(START.plusYears(3));
    assertThat(of(KNOWN, Map.of(), List.of(), List.of(), NONE, most).until())
        .isEqualTo(START.plusYears(3));
  }

  /** What a study says of its colony is the middle of what is believed, and a quarter wide. */
  @Test
  void priorsMoveToWhatAStudySays() {
    double standard = StandardColony.on(KNOWN.model(), START).adults();
    Study s =
        study(
            colony(
                OptionalDouble.of(standard * 0.6),
                OptionalDouble.of(2),
                0.8,
                new StockTraits(0, 0.7)),
            List.of());
    Priors usual = Priors.defaults();
    Priors moved = StudyPriors.of(s);
    assertThat(moved.of(Unknown.INFESTATION).median()).isEqualTo(2);
    assertThat(moved.of(Unknown.INFESTATION).logSd()).isEqualTo(0.25);
    assertThat(moved.of(Unknown.START_SIZE).median()).isCloseTo(0.75, within(1e-9));
    assertThat(moved.of(Unknown.START_SIZE).logSd()).isEqualTo(0.25);
    assertThat(moved.of(Unknown.LAYING_FACTOR).median()).isEqualTo(0.8);
    assertThat(moved.of(Unknown.LAYING_FACTOR).logSd())
        .isEqualTo(usual.of(Unknown.LAYING_FACTOR).logSd());
    assertThat(moved.of(Unknown.REPRODUCTION_FACTOR).median()).isEqualTo(0.7);
    assertThat(moved.of(Unknown.REPRODUCTION_FACTOR).logSd())
        .isEqualTo(usual.of(Unknown.REPRODUCTION_FACTOR).logSd());
    assertThat(moved.efficacies()).isEmpty();
    Priors open = StudyPriors.of(UNKNOWN);
    assertThat(open.of(Unknown.INFESTATION)).isEqualTo(usual.of(Unknown.INFESTATION));
    assertThat(open.of(Unknown.START_SIZE)).isEqualTo(usual.of(Unknown.START_SIZE));
    Study none = study(colony(OptionalDouble.of(0)), List.of(), "amitraz");
    assertThat(StudyPriors.of(none).of(Unknown.INFESTATION).median())
        .as("a logarithm needs some")
        .isEqualTo(0.001);
    assertThat(StudyPriors.of(none).efficacies()).containsKey("amitraz-strips");
    Prior size =
        StudyPriors.of(
                study(
                    colony(
                        OptionalDouble.of(120_000),
                        OptionalDouble.of(2),
                        0.05,
                        new StockTraits(0, 0)),
                    List.of()))
            .of(Unknown.START_SIZE);
    assertThat(size.median()).as("not above the most").isEqualTo(size.max());
  }

  private static final Place PLACE = Place.of(Catalog.climate("temperate"), Surroundings.SPARSE);

  private static Map<String, List<Wash>> table(int colonies) {
    Map<String, List<Wash>> out = new TreeMap<>();
    for (int i = 0; i < colonies; i++) {
      String name = "H" + (100 + i);
      out.put(name, List.of(Wash.of(START.plusDays(i), name, 1, 300)));
    }
    return out;
  }

  @Test
  void coloniesOfATableAreDecidedOnOneDay() {
    List<ColonyCase> many = ColonyCases.ofWashes(PLACE, table(31));
    assertThat(many).hasSize(31);
    assertThat(many).extracting(ColonyCase::now).containsOnly(START.plusDays(31));
    assertThat(ColonyCases.inYards(many.subList(0, 2), Map.of("H101", "Ridge")))
        .extracting(ColonyCase::yard)
        .containsExactly("", "Ridge");
    assertThatThrownBy(() -> ColonyCases.decisionDate(Map.of("A", List.of()), Map.of()))
        .isInstanceOf(Unworkable.class)
        .hasMessage("there is no wash; give at least one");
  }

  @Test
  void aColonyOfBoardsAloneIsSeenFromItsFirstBoard() {
    BoardCount first = new BoardCount(START, START.plusDays(3), "A", 9);
    BoardCount next = new BoardCount(START.plusDays(9), START.plusDays(12), "A", 9);
    BoardCount other = new BoardCount(START.minusDays(9), START.minusDays(6), "B", 9);
    Map<String, List<Wash>> noWash = Map.of("A", List.of());
    List<BoardCount> boards = List.of(next, first, other);
    ColonyCase c =
        ColonyCases.ofCounts(PLACE, noWash, boards, Map.of(), NONE, Horizon::spring).get(0);
    assertThat(c.start()).isEqualTo(START);
    assertThat(c.now()).isEqualTo(START.plusDays(13));
    ColonyCase on =
        ColonyCases.ofCounts(
                PLACE, noWash, List.of(first), Map.of(), Optional.of(START), Horizon::spring)
            .get(0);
    assertThat(on.start()).isEqualTo(START);
    ColonyCase early =
        ColonyCases.ofCounts(
                PLACE,
                noWash,
                List.of(first),
                Map.of(),
                Optional.of(START.minusDays(3)),
                Horizon::spring)
            .get(0);
    assertThat(early.start()).as("not after the decision").isEqualTo(START.minusDays(3));
    assertThatThrownBy(
            () ->
                ColonyCases.ofCounts(
                    PLACE, noWash, List.of(other), Map.of(), NONE, Horizon::spring))
        .hasMessage("colony \"A\" has no wash; give at least one");
    List<ColonyCase> cases = ColonyCases.ofWashes(PLACE, washes(START));
    BoardCount strange = new BoardCount(START.plusDays(20), START.plusDays(25), "B", 9);
    assertThat(ColonyCases.withBoards(cases, List.of(next, strange), false))
        .as("a board of another colony moves no decision")
        .extracting(ColonyCase::now)
        .containsExactly(START.plusDays(13));
    BoardCount same = new BoardCount(START.minusDays(2), START.plusDays(1), "A", 9);
    assertThat(ColonyCases.withBoards(cases, List.of(same), false).get(0).now())
        .as("taken out on the decision date")
        .isEqualTo(START.plusDays(2));
    assertThat(ColonyCases.withBoards(cases, List.of(same), true).get(0).now())
        .as("which was named")
        .isEqualTo(START.plusDays(1));
  }

  @Test
  void aPlaceIsChangedInOneThing() {
    YearSpan span = new YearSpan(MonthDay.of(9, 1), MonthDay.of(10, 1));
    Place bees = PLACE.dated(Optional.empty(), Optional.of(span));
    assertThat(bees.model().climate().winterBees()).isEqualTo(span);
    assertThat(bees.model().climate().supers()).isEqualTo(PLACE.model().climate().supers());
    TreeMap<LocalDate, Double> highs = new TreeMap<>(Map.of(START, 31.5));
    assertThat(PLACE.with(new DailyHighs(highs)).model().climate().high(START)).isEqualTo(31.5);
    Place other = PLACE.with(Catalog.threshold("strange-sheppard-2001"));
    assertThat(other.thresholds().name()).isEqualTo("strange-sheppard-2001");
    assertThat(other.model()).isEqualTo(PLACE.model());
    assertThat(Place.of(KNOWN).model()).isEqualTo(KNOWN.model());
  }

  /** What the study says of its colony, and what that was given, holds for that colony alone. */
  @Test
  void anApiaryStandsWhereItsStudySays() {
    Study s = study(colony(OptionalDouble.of(2)), List.of(THYMOL), "amitraz");
    Control early = Catalog.control("thymol").at(LocalDate.of(2025, 4, 1));
    WashFile washes =
        new WashFile(
            "washes.csv",
            List.of(wash(START), Wash.of(START.plusDays(70), "B", 4, 300)),
            Map.of("A", 1, "B", 2),
            Map.of("B", "Brook"),
            List.of(new BoardCount(START.plusDays(80), START.plusDays(84), "C", 9)),
            List.of());
    TreatmentFile given =
        new TreatmentFile(
            "given.csv",
            List.of(
                new TreatmentFile.Given("A", SPLIT, ""), new TreatmentFile.Given("B", early, "")),
            Map.of(),
            List.of());
    List<ColonyCase> cases = ApiaryCases.of(s, washes, Optional.of(given));
    assertThat(cases).extracting(ColonyCase::colony).containsExactly("A", "B", "C");
    assertThat(cases).extracting(ColonyCase::yard).containsExactly("", "Brook", "");
    assertThat(cases).extracting(ColonyCase::now).containsOnly(START.plusDays(85));
    assertThat(cases)
        .extracting(ColonyCase::given)
        .containsExactly(List.of(SPLIT, THYMOL), List.of(early), List.of());
    assertThat(cases)
        .extracting(ColonyCase::start)
        .containsExactly(START, early.from(), START.plusDays(80));
    assertThat(cases.get(0).priors()).isEqualTo(StudyPriors.of(s));
    for (ColonyCase other : cases.subList(1, 3)) {
      assertThat(other.priors().of(Unknown.INFESTATION))
          .isEqualTo(Priors.defaults().of(Unknown.INFESTATION));
      assertThat(other.priors().efficacies()).containsOnlyKeys("amitraz-strips");
    }
    assertThat(cases).extracting(ColonyCase::model).containsOnly(s.model());
    List<ColonyCase> plain =
        ApiaryCases.of(study(colony(OptionalDouble.of(2)), List.of()), washes, Optional.empty());
    assertThat(plain).extracting(ColonyCase::given).containsOnly(List.of());
    assertThat(plain.get(1).priors()).isEqualTo(Priors.defaults());
  }
}
