package broodtide.assessment;

import broodtide.catalog.Referred;
import broodtide.control.Control;
import broodtide.forms.BadInput;
import broodtide.forms.Source;
import broodtide.measure.OutOfRange;
import broodtide.measure.Unworkable;
import broodtide.study.LookalikeNames;
import broodtide.study.Study;
import broodtide.study.WashFile;
import broodtide.wash.BoardCount;
import broodtide.wash.Wash;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The one way from washes or a study to the cases that all answers start from. What is asked of the
 * same washes, at the same place, on the same decision date is then answered alike, from a command
 * as from a program of one's own.
 */
public final class ColonyCases {
  /** Years that can be looked ahead from the decision date. */
  public static final int MOST_YEARS = 3;

  static final String UNTIL = "--until";

  /** Colonies of a table up to which each is drawn unasked. Choice. */
  public static final int FEW = 30;

  private ColonyCases() {}

  /**
   * {@return the decision date of an apiary for which none is named: the day after the newest wash
   * or treatment of any of its colonies}
   *
   * @param washes washes of each colony, at least one in all
   * @param given controls already carried out, of each colony
   * @throws Unworkable when there is no wash
   */
  public static LocalDate decisionDate(
      Map<String, List<Wash>> washes, Map<String, List<Control>> given) {
    return decisionDate(washes, List.of(), given);
  }

  /**
   * {@return the decision date of an apiary for which none is named: the day after the newest count
   * or treatment of any of its colonies}
   *
   * @param washes washes of each colony, none for a colony with boards alone
   * @param boards mites on boards under these colonies
   * @param given controls already carried out, of each colony
   * @throws Unworkable when there is no count
   */
  public static LocalDate decisionDate(
      Map<String, List<Wash>> washes, List<BoardCount> boards, Map<String, List<Control>> given) {
    LocalDate newest =
        Stream.concat(
                washes.values().stream().flatMap(List::stream).map(Wash::date),
                boards.stream().map(BoardCount::date))
            .max(Comparator.naturalOrder())
            .orElseThrow(() -> new Unworkable("there is no wash; give at least one"));
    List<Control> done =
        washes.keySet().stream()
            .flatMap(colony -> given.getOrDefault(colony, List.of()).stream())
            .toList();
    return dayAfter(newest, done);
  }

  /**
   * {@return one case for each colony without treatments, in the order of the map, decided on the
   * day after the newest wash and looked at to the next spring}
   *
   * @param place where the colonies stand
   * @param washes washes of each colony, at least one each, by date
   * @throws Unworkable when a colony has no wash, or its days span too many years
   */
  public static List<ColonyCase> ofWashes(Place place, Map<String, List<Wash>> washes) {
    return ofWashes(place, washes, Map.of(), Optional.empty(), Horizon::spring);
  }

  /**
   * {@return one case for each colony, in the order of the map; all are decided on one day}
   *
   * @param place where the colonies stand
   * @param washes washes of each colony, at least one each, by date
   * @param given controls already carried out, of each colony that had any
   * @param decisionDate the day of decision; empty for {@link #decisionDate}
   * @param horizon how far to look ahead
   * @throws OutOfRange when a colony was washed or treated after the decision date, or the horizon
   *     is not after it or more than {@link #MOST_YEARS} years away
   * @throws Unworkable when a colony has no wash, or its days span too many years
   */
  public static List<ColonyCase> ofWashes(
      Place place,
      Map<String, List<Wash>> washes,
      Map<String, List<Control>> given,
      Optional<LocalDate> decisionDate,
      Horizon horizon) {
    return ofCounts(place, washes, List.of(), given, decisionDate, horizon);
  }

  /**
   * {@return one case for each colony, in the order of the map; all are decided on one day}
   *
   * @param place where the colonies stand
   * @param washes washes of each colony by date; none for a colony with boards alone
   * @param boards mites on boards under these colonies and others; they say when a colony was first
   *     seen, and are told the cases by {@link #withBoards}
   * @param given controls already carried out, of each colony that had any
   * @param decisionDate the day of decision; empty for {@link #decisionDate}
   * @param horizon how far to look ahead
   * @throws OutOfRange when a colony was washed or treated after the decision date, or the horizon
   *     is not after it or more than {@link #MOST_YEARS} years away
   * @throws Unworkable when a colony has no count, or its days span too many years
   */
  public static List<ColonyCase> ofCounts(
      Place place,
      Map<String, List<Wash>> washes,
      List<BoardCount> boards,
      Map<String, List<Control>> given,
      Optional<LocalDate> decisionDate,
      Horizon horizon) {
    LocalDate now = decisionDate.orElseGet(() -> decisionDate(washes, boards, given));
    PlaceCases here = PlaceCases.of(place, now, horizon);
    List<ColonyCase> cases = new ArrayList<>();
    washes.forEach(
        (colony, taken) ->
            cases.add(here.of(colony, taken, boards, given.getOrDefault(colony, List.of()))));
    return List.copyOf(cases);
  }

  /**
   * The day on which the first board of a colony without washes went in, if before the decision.
   */
  static LocalDate firstBoard(String colony, List<BoardCount> boards, LocalDate now) {
    LocalDate first =
        boards.stream()
            .filter(b -> b.colony().equals(colony))
            .map(BoardCount::from)
            .min(Comparator.naturalOrder())
            .orElseThrow(
                () -> new Unworkable("colony \"" + colony + "\" has no wash; give at least one"));
    return first.isBefore(now) ? first : now;
  }

  /**
   * {@return the same cases, each in its yard; colonies without one stand together}
   *
   * @param cases one for each colony
   * @param yards name of the yard by colony, as {@link WashFile#yards} has it
   */
  public static List<ColonyCase> inYards(List<ColonyCase> cases, Map<String, String> yards) {
    return cases.stream()
        .map(c -> c.in(yards.getOrDefault(c.colony(), ColonyCase.NO_YARD)))
        .toList();
  }

  /**
   * {@return the same cases with mites counted on boards under their colonies; where a board came
   * out on the decision date or later and no date was named, all are decided on the day after}
   *
   * @param cases one for each colony
   * @param boards mites on boards, of these colonies and of others, which are passed over
   * @param named whether the decision date was named and must stay
   * @throws Unworkable when a board lies after a named decision date, or lay while a treatment ran
   */
  public static List<ColonyCase> withBoards(
      List<ColonyCase> cases, List<BoardCount> boards, boolean named) {
    Set<String> names = cases.stream().map(ColonyCase::colony).collect(Collectors.toSet());
    List<BoardCount> own = boards.stream().filter(b -> names.contains(b.colony())).toList();
    Optional<LocalDate> newest =
        named
            ? Optional.empty()
            : own.stream().map(BoardCount::date).max(Comparator.naturalOrder());
    Map<String, List<BoardCount>> byColony =
        own.stream().collect(Collectors.groupingBy(BoardCount::colony));
    return cases.stream()
        .map(c -> withBoards(c, byColony.getOrDefault(c.colony(), List.of()), newest))
        .toList();
  }

  /**
   * {@return the same case with mites counted on boards under the colony, decided after the newest
   * board of its apiary}
   *
   * @param c the case
   * @param boards mites on boards under this colony
   * @param newest the day on which the newest board of the apiary was taken out; empty where there
   *     is none or the decision date was named
   * @throws Unworkable as {@link #withBoards(List, List, boolean)} says
   */
  public static ColonyCase withBoards(
      ColonyCase c, List<BoardCount> boards, Optional<LocalDate> newest) {
    return newest
        .filter(day -> !day.isBefore(c.now()))
        .map(day -> c.decidingOn(day.plusDays(1)))
        .orElse(c)
        .withBoards(boards);
  }

  /**
   * {@return the case of a study as it stands: its place, its own washes, what it says of the
   * colony, and its last day}
   *
   * @param study the study
   * @param today washes after this day are refused
   * @throws BadInput when the table of washes that the study names is faulty
   * @throws IOException when that table cannot be read
   */
  public static ColonyCase ofStudy(Study study, LocalDate today) throws IOException {
    Optional<WashFile> table = attached(study, today);
    List<BoardCount> boards = table.map(WashFile::boards).orElse(List.of());
    ColonyCase c =
        ofStudy(
            study,
            Place.of(study),
            table.map(WashFile::countsByColony).orElse(Map.of()),
            boards,
            List.of(),
            Optional.empty(),
            Optional.empty());
    return withBoards(List.of(c), boards, false).get(0);
  }

  /**
   * {@return the table of washes that a study names; empty when it names none}
   *
   * @param study the study
   * @param today washes after this day are refused
   * @throws BadInput when the table is faulty
   * @throws IOException when it cannot be read
   */
  public static Optional<WashFile> attached(Study study, LocalDate today) throws IOException {
    if (study.washes().isEmpty()) {
      return Optional.empty();
    }
    Referred<Source> table = study.washes().get();
    try (InputStream in = table.value().open()) {
      return Optional.of(WashFile.read(in, table.written(), today));
    }
  }

  /**
   * {@return the case of a study}
   *
   * @param study says the colony, its first day, what was given, and what is believed of it
   * @param place where it stands, as a rule {@link Place#of(Study)}
   * @param washes washes by colony, of which those of the study's colony are taken
   * @param further controls already carried out besides those of the study
   * @param decisionDate the day of decision; empty for the day after the last wash or further
   *     control, or the study's first day when there is neither
   * @param until the last day to look at; empty for the study's
   * @throws OutOfRange when a day comes before what it must follow
   * @throws Unworkable when neither washes nor an infestation are known
   */
  public static ColonyCase ofStudy(
      Study study,
      Place place,
      Map<String, List<Wash>> washes,
      List<Control> further,
      Optional<LocalDate> decisionDate,
      Optional<LocalDate> until) {
    return ofStudy(study, place, washes, List.of(), further, decisionDate, until);
  }

  /**
   * {@return the case of a study}
   *
   * @param study says the colony, its first day, what was given, and what is believed of it
   * @param place where it stands, as a rule {@link Place#of(Study)}
   * @param washes washes by colony, of which those of the study's colony are taken
   * @param boards mites on boards under this colony and others, of which one is enough to know the
   *     colony by; they are told the case by {@link #withBoards(List, List, boolean)}
   * @param further controls already carried out besides those of the study
   * @param decisionDate the day of decision; empty for the day after the last wash or further
   *     control, or the study's first day when there is neither
   * @param until the last day to look at; empty for the study's
   * @throws OutOfRange when a day comes before what it must follow
   * @throws Unworkable when neither counts nor an infestation are known
   */
  public static ColonyCase ofStudy(
      Study study,
      Place place,
      Map<String, List<Wash>> washes,
      List<BoardCount> boards,
      List<Control> further,
      Optional<LocalDate> decisionDate,
      Optional<LocalDate> until) {
    String colony = study.colony().name();
    List<Wash> taken = washes.getOrDefault(colony, List.of());
    boolean counted = !taken.isEmpty() || boards.stream().anyMatch(b -> b.colony().equals(colony));
    if (!counted && study.colony().infestation().isEmpty()) {
      throw new Unworkable(nothingKnown(study, washes));
    }
    if (!taken.isEmpty() && taken.get(0).date().isBefore(study.start())) {
      throw new OutOfRange(
          "date of the first wash of colony \"" + colony + "\"",
          taken.get(0).date().toString(),
          "the study's start, "
              + study.start()
              + ", or later; set \"start\" of the study to an earlier day or take the wash out");
    }
    LocalDate first = start(study.start(), further);
    if (first.isBefore(study.start())) {
      throw new OutOfRange(
          "--given",
          first.toString(),
          "treatments from the study's start, "
              + study.start()
              + ", onwards; what the study says of the colony holds on that day");
    }
    List<Control> given = Stream.concat(study.given().stream(), further.stream()).toList();
    LocalDate last =
        taken.isEmpty() ? study.start().minusDays(1) : taken.get(taken.size() - 1).date();
    LocalDate now = decisionDate.orElse(dayAfter(last, further));
    if (decisionDate.isPresent()) {
      if (now.isBefore(study.start())) {
        throw decision(now, study.start(), "with which the study begins");
      }
      checkPast(colony, now, taken, given);
    }
    LocalDate wanted = until.orElse(study.until());
    checkUntil(until.isPresent() ? UNTIL : "\"until\" of the study", wanted, now);
    LocalDate end = new YearStages(place.model().climate()).believedUntil(now, wanted);
    return new ColonyCase(
            colony,
            place.model(),
            study.start(),
            now,
            end,
            taken,
            given,
            place.thresholds(),
            StudyPriors.of(study))
        .in(study.colony().yard());
  }

  private static String nothingKnown(Study study, Map<String, List<Wash>> washes) {
    String colony = study.colony().name();
    Map<String, String> others = new TreeMap<>();
    washes.keySet().forEach(name -> others.put(name, "the table of washes"));
    List<String> alike = LookalikeNames.between(Map.of(colony, "the study"), others);
    return "the study \""
        + study.title()
        + "\" has no counts of colony \""
        + colony
        + "\" and no infestation; give one of them"
        + (washes.isEmpty()
            ? ""
            : "; the table of washes has " + String.join(", ", washes.keySet()))
        + (alike.isEmpty() ? "" : ". " + String.join(" ", alike));
  }

  /** What is known on the day of decision was seen or done by then. */
  static void checkPast(String colony, LocalDate now, List<Wash> washes, List<Control> given) {
    for (Wash wash : washes) {
      if (wash.date().isAfter(now)) {
        LocalDate last = washes.get(washes.size() - 1).date();
        throw decision(now, last, "the day of the last wash of colony \"" + colony + "\"");
      }
    }
    for (Control done : given) {
      if (done.from().isAfter(now)) {
        throw decision(
            now,
            done.from(),
            "the day on which colony \"" + colony + "\" was given " + done.name());
      }
    }
  }

  private static OutOfRange decision(LocalDate now, LocalDate earliest, String what) {
    return new OutOfRange(
        "--decide-on", now.toString(), earliest + " or later, " + what + "; give a later day");
  }

  static void checkUntil(String field, LocalDate until, LocalDate now) {
    String decision = now + ", the day of decision";
    if (!until.isAfter(now)) {
      throw new OutOfRange(field, until.toString(), "a day after " + decision);
    }
    if (until.isAfter(now.plusYears(MOST_YEARS))) {
      throw new OutOfRange(
          field,
          until.toString(),
          now.plusYears(MOST_YEARS)
              + " at the latest, three years after "
              + decision
              + "; --until gives an earlier day");
    }
  }

  /** The first day that is followed: no later than the first treatment. */
  static LocalDate start(LocalDate first, List<Control> given) {
    return Stream.concat(Stream.of(first), given.stream().map(Control::from))
        .min(Comparator.naturalOrder())
        .orElse(first);
  }

  /** The day after the last wash and the beginning of the last treatment. */
  private static LocalDate dayAfter(LocalDate last, List<Control> given) {
    return Stream.concat(Stream.of(last), given.stream().map(Control::from))
        .max(Comparator.naturalOrder())
        .orElse(last)
        .plusDays(1);
  }
}
