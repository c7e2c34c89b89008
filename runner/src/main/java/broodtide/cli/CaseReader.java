package broodtide.cli;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.ColonyCases;
import broodtide.assessment.Horizon;
import broodtide.assessment.Place;
import broodtide.assessment.UsualPlans;
import broodtide.catalog.Catalog;
import broodtide.catalog.ResistantMites;
import broodtide.catalog.Surroundings;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.measure.OutOfRange;
import broodtide.season.Climate;
import broodtide.study.HighsFile;
import broodtide.study.LookalikeNames;
import broodtide.study.Studies;
import broodtide.study.Study;
import broodtide.study.TreatmentFile;
import broodtide.study.WashFile;
import broodtide.wash.BoardCount;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import broodtide.words.Plain;
import broodtide.words.ThresholdWords;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Turns options and files into cases, one per colony. */
final class CaseReader {
  private static final String FEW_NEIGHBOURS =
      "Few neighbouring colonies are assumed; --neighbours changes that.";

  private static final String DECISION_DATE = "Decision date: ";

  private final CommandContext desk;
  private final ColonyOptions options;
  private final List<String> notes = new ArrayList<>();

  /** Where each colony was first named: in the study, or in the table of washes. */
  private final Map<String, String> places = new LinkedHashMap<>();

  /** The yard of each colony that names one. */
  private final Map<String, String> yards = new LinkedHashMap<>();

  private final List<BoardCount> boards = new ArrayList<>();

  CaseReader(CommandContext desk, ColonyOptions options) {
    this.desk = desk;
    this.options = options;
  }

  /**
   * What a command works on.
   *
   * @param cases one per colony
   * @param study the study, when there is one
   * @param notes what was assumed, in sentences
   */
  record Cases(List<ColonyCase> cases, Optional<Study> study, List<String> notes) {
    /**
     * The notes that are news to whoever reads the answer. The report and results.json have all.
     *
     * @param reinvasion whether mites from other colonies move the answer
     */
    List<String> news(boolean reinvasion) {
      boolean dates = cases.stream().anyMatch(Cases::decidedOnAnotherDay);
      return notes.stream()
          .filter(note -> reinvasion || !note.equals(FEW_NEIGHBOURS))
          .filter(note -> dates || !note.startsWith(DECISION_DATE))
          .toList();
    }

    /** Whether a colony is decided on another day than the one after its own newest record. */
    private static boolean decidedOnAnotherDay(ColonyCase c) {
      return c.washes().isEmpty()
          || !ColonyCases.decisionDate(
                  Map.of(c.colony(), c.washes()), Map.of(c.colony(), c.given()))
              .equals(c.now());
    }

    /** Names of the colonies. */
    List<String> colonies() {
      return cases.stream().map(ColonyCase::colony).toList();
    }

    /** The plans that a colony is decided by: those of its study, or the usual ones. */
    List<Plan> plans(ColonyCase c) {
      return study
          .map(s -> UsualPlans.besideWaiting(s.plans()))
          .orElseGet(() -> UsualPlans.of(c, Optional.empty()));
    }
  }

  /** Reads everything the options name; all colonies are decided on one day. */
  Cases read(Horizon horizon) {
    if (options.study != null) {
      options.saidByStudy().ifPresent(CaseReader::refuse);
      return ofStudy(Studies.named(options.study.toString()));
    }
    Place place = place();
    Map<String, List<Wash>> washes = withBoardsAlone(washes(tableOfWashes()));
    Map<String, List<Control>> given = given(washes.keySet());
    LocalDate now =
        options.decideOn == null
            ? ColonyCases.decisionDate(washes, boards, given)
            : options.decideOn;
    List<ColonyCase> cases =
        ColonyCases.ofCounts(place, only(washes), boards, given, Optional.of(now), until(horizon));
    notes.add(
        decided(
            now,
            options.decideOn == null
                ? "the day after the newest wash or treatment; --decide-on changes it."
                : "as --decide-on says."));
    threshold(cases.stream());
    return new Cases(placed(cases), Optional.empty(), notes);
  }

  /**
   * Reads everything the options name for a command that looks back: each colony is taken on the
   * day after its own last wash or treatment.
   *
   * @param command its name
   */
  Cases lookingBack(String command, Horizon horizon) {
    if (options.decideOn != null) {
      throw new Refusal(
          "--decide-on has no place in '"
              + command
              + "', which looks back and decides nothing; leave it out");
    }
    if (options.study != null) {
      return read(horizon);
    }
    Place place = place();
    Map<String, List<Wash>> washes = washes(tableOfWashes());
    if (washes.isEmpty()) {
      throw new Refusal(
          "the table has mites on boards alone, and '"
              + command
              + "' needs washes; add washes, or use 'broodtide forecast'");
    }
    Map<String, List<Control>> given = given(washes.keySet());
    List<ColonyCase> cases = new ArrayList<>();
    only(washes)
        .forEach(
            (colony, taken) ->
                cases.addAll(
                    ColonyCases.ofWashes(
                        place, Map.of(colony, taken), given, Optional.empty(), until(horizon))));
    return new Cases(placed(cases), Optional.empty(), notes);
  }

  /** What to mind about the thresholds of colonies that are all decided on one day. */
  private void threshold(Stream<ColonyCase> cases) {
    cases
        .findFirst()
        .ifPresent(c -> notes.addAll(ThresholdWords.notes(c.stages(), c.thresholds(), c.now())));
  }

  private static String decided(LocalDate now, String why) {
    return DECISION_DATE + Plain.day(now) + ", " + why;
  }

  private String tableOfWashes() {
    return options
        .washes()
        .orElseThrow(
            () ->
                new Refusal(
                    "give a table of washes or --study FILE; 'broodtide study new DIR' writes"
                        + " examples of both"));
  }

  /** The place that the options name. */
  private Place place() {
    tableOfWashes();
    if (options.climate == null) {
      throw new Refusal(
          "give the climate with --climate NAME; known are "
              + String.join(", ", Catalog.CLIMATES.names()));
    }
    Climate climate = Catalog.climate(options.climate);
    Surroundings around = surroundings(options.neighbours == null ? "sparse" : options.neighbours);
    if (options.neighbours == null) {
      notes.add(FEW_NEIGHBOURS);
    }
    ThresholdSet thresholds =
        Catalog.threshold(options.threshold == null ? Catalog.USUAL_THRESHOLD : options.threshold);
    return dated(Place.of(climate, options.south, around, thresholds));
  }

  /** With the beekeeper's own dates in place of the climate's, where they are given. */
  private Place dated(Place place) {
    Place dated =
        place.dated(Optional.ofNullable(options.supers), Optional.ofNullable(options.winterBees));
    if (options.highs == null) {
      return dated;
    }
    String name = options.highs.toString();
    LocalDate today = LocalDate.now(desk.clock());
    HighsFile file =
        UserFile.read(name, "the table of daily highs", in -> HighsFile.read(in, name, today));
    notes.addAll(file.notes());
    notes.add(
        "Daily highs of "
            + file.highs().byDay().size()
            + " days are taken from "
            + name
            + ", the others from the climate.");
    return dated.with(file.highs());
  }

  /** With the substances in mind that did badly here. */
  private ColonyCase resisting(ColonyCase c) {
    return options.resistant.isEmpty()
        ? c
        : c.with(ResistantMites.believed("--resistant", options.resistant, c.priors()));
  }

  /** In their yards, and with the substances in mind that did badly here. */
  private List<ColonyCase> placed(List<ColonyCase> cases) {
    if (!options.resistant.isEmpty()) {
      notes.add(
          "Taken to act as where mites resist: "
              + String.join(", ", options.resistant)
              + ", as --resistant says.");
    }
    List<ColonyCase> counted = ColonyCases.withBoards(cases, boards, options.decideOn != null);
    return ColonyCases.inYards(counted, yards).stream().map(this::resisting).toList();
  }

  private Horizon until(Horizon usual) {
    return options.until == null ? usual : Horizon.on(options.until);
  }

  private static void refuse(String option) {
    throw new Refusal(
        option
            + " cannot stand beside --study, which says it itself; change the study, or leave one"
            + " of the two out");
  }

  /** Reads everything that a study and the options name. */
  Cases ofStudy(Study study) {
    String name = study.colony().name();
    Map<String, List<Wash>> washes = studyWashes(study);
    List<String> alike = LookalikeNames.between(Map.of(name, "the study"), places);
    if (!alike.isEmpty() && !washes.containsKey(name) && study.colony().infestation().isEmpty()) {
      throw new Refusal(
          "the study \""
              + study.title()
              + "\" has no counts of colony \""
              + name
              + "\" and no infestation; give one of them. "
              + String.join(" ", alike));
    }
    notes.addAll(alike);
    places.put(name, "the study");
    if (!study.colony().yard().isEmpty()) {
      yards.put(name, study.colony().yard());
    }
    List<Control> further = given(Set.of(name)).getOrDefault(name, List.of());
    Place place = dated(Place.of(study));
    ColonyCase c =
        ColonyCases.ofStudy(
            study,
            options.threshold == null ? place : place.with(Catalog.threshold(options.threshold)),
            washes,
            boards,
            further,
            Optional.ofNullable(options.decideOn),
            Optional.ofNullable(options.until));
    if (options.decideOn != null) {
      notes.add(decided(c.now(), "as --decide-on says."));
    }
    if (!study.resistant().isEmpty()) {
      notes.add(
          "Taken to act as where mites resist: "
              + String.join(", ", study.resistant())
              + ", as the study says.");
    }
    threshold(Stream.of(c));
    return new Cases(placed(List.of(c)), Optional.of(study), notes);
  }

  /** The washes of each colony; none for one with boards alone. */
  private Map<String, List<Wash>> studyWashes(Study study) {
    if (options.washes().isPresent()) {
      return only(withBoardsAlone(washes(options.washes().get())));
    }
    try {
      return withBoardsAlone(
          ColonyCases.attached(study, LocalDate.now(desk.clock()))
              .map(this::noted)
              .orElse(Map.of()));
    } catch (IOException e) {
      throw UserFile.cannotRead(study.washes().orElseThrow().written(), e);
    }
  }

  private Map<String, List<Wash>> washes(String name) {
    LocalDate today = LocalDate.now(desk.clock());
    if (name.equals("-")) {
      try {
        return noted(WashFile.read(desk.in(), "standard input", today));
      } catch (IOException e) {
        throw UserFile.cannotRead("standard input", e);
      }
    }
    return noted(UserFile.read(name, "the table of washes", in -> WashFile.read(in, name, today)));
  }

  /** What the table of treatments, when there is one, says of these colonies. */
  private Map<String, List<Control>> given(Set<String> colonies) {
    if (options.given == null) {
      return Map.of();
    }
    String name = options.given.toString();
    LocalDate today = LocalDate.now(desk.clock());
    TreatmentFile file =
        UserFile.read(name, "the table of treatments", in -> TreatmentFile.read(in, name, today));
    notes.addAll(file.notes());
    notes.addAll(file.unused(colonies));
    notes.addAll(
        LookalikeNames.between(LookalikeNames.lines(file.colonies(), " of " + name), places));
    return colonies.stream().collect(Collectors.toMap(Function.identity(), file::of));
  }

  private Map<String, List<Wash>> noted(WashFile file) {
    notes.addAll(file.notes());
    places.putAll(LookalikeNames.lines(file.colonies(), " of " + file.name()));
    yards.putAll(file.yards());
    boards.addAll(file.boards());
    return file.byColony();
  }

  private Map<String, List<Wash>> withBoardsAlone(Map<String, List<Wash>> washes) {
    Map<String, List<Wash>> counts = new TreeMap<>(washes);
    boards.forEach(board -> counts.putIfAbsent(board.colony(), List.of()));
    return counts;
  }

  private Map<String, List<Wash>> only(Map<String, List<Wash>> all) {
    if (options.colony == null) {
      return all;
    }
    List<Wash> one = all.get(options.colony);
    if (one == null) {
      throw new OutOfRange(
          "--colony",
          "\"" + options.colony + "\"",
          KnownWords.allowed(options.colony, List.copyOf(all.keySet())));
    }
    return Map.of(options.colony, one);
  }

  private static Surroundings surroundings(String word) {
    return KnownWords.read(
        "--neighbours", word.toLowerCase(Locale.ROOT), Surroundings.values(), Surroundings::word);
  }
}
