package broodtide.cli;

import broodtide.assessment.ColonyCase;
import broodtide.control.Plan;
import broodtide.assessment.UsualPlans;
import broodtide.assessment.StudyPriors;
import broodtide.assessment.YearStages;
import broodtide.catalog.Assumptions;
import broodtide.catalog.Catalog;
import broodtide.catalog.Referred;
import broodtide.catalog.Surroundings;
import broodtide.catalog.ThresholdLibrary;
import broodtide.control.Control;
import broodtide.engine.ColonyModel;
import broodtide.fit.Priors;
import broodtide.forms.Source;
import broodtide.measure.OutOfRange;
import broodtide.mite.Immigration;
import broodtide.season.Climate;
import broodtide.study.LookalikeNames;
import broodtide.study.Studies;
import broodtide.study.Study;
import broodtide.study.TreatmentFile;
import broodtide.study.WashFile;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import broodtide.words.Plain;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Turns options and files into cases, one per colony. */
final class CaseReader {
  /** Years that can be looked ahead from the day of decision. */
  private static final int MOST_YEARS = 3;

  private final Desk desk;
  private final ColonyOptions options;
  private final List<String> notes = new ArrayList<>();

  /** Where each colony was first named: in the study, or in the table of washes. */
  private final Map<String, String> places = new LinkedHashMap<>();

  private Optional<TreatmentFile> treatments = Optional.empty();

  CaseReader(Desk desk, ColonyOptions options) {
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
    /** Names of the colonies. */
    List<String> colonies() {
      return cases.stream().map(ColonyCase::colony).toList();
    }

    /** The plans that a colony is decided by: those of its study, or the usual ones. */
    List<Plan> plans(ColonyCase c) {
      return study.map(Study::plans).orElseGet(() -> UsualPlans.of(c, Optional.empty()));
    }
  }

  /** Reads everything the options name. */
  Cases read(Horizon horizon) {
    if (options.study != null) {
      options.saidByStudy().ifPresent(CaseReader::refuse);
      return ofStudy(Studies.named(options.study.toString()), horizon);
    }
    String file =
        options
            .washes()
            .orElseThrow(
                () ->
                    new Refusal(
                        "give a table of washes or --study FILE; 'broodtide study new DIR' writes"
                            + " examples of both"));
    if (options.climate == null) {
      throw new Refusal(
          "say where the colony stands with --climate NAME; known are "
              + String.join(", ", Catalog.CLIMATES.names()));
    }
    Climate climate = Catalog.climate(options.climate);
    Surroundings around = surroundings(options.neighbours == null ? "sparse" : options.neighbours);
    Immigration arrivals = around.immigration(Assumptions.usual());
    ColonyModel model =
        options.dated(
            ColonyModel.in(options.south ? climate.inSouth() : climate)
                .with(options.south ? arrivals.inSouth() : arrivals));
    if (options.neighbours == null) {
      notes.add("Neighbouring colonies are taken as sparse; --neighbours changes that.");
    }
    ThresholdSet thresholds =
        ThresholdLibrary.find(
            options.threshold == null ? ThresholdLibrary.usual() : options.threshold);
    List<ColonyCase> cases = new ArrayList<>();
    Map<String, List<Wash>> washes = washes(file);
    readGiven(washes.keySet());
    for (Map.Entry<String, List<Wash>> c : only(washes).entrySet()) {
      List<Wash> taken = c.getValue();
      List<Control> given = given(c.getKey());
      LocalDate now = dayAfter(taken.get(taken.size() - 1).date(), given);
      LocalDate until =
          options.until == null ? horizon.of(new YearStages(model.climate()), now) : options.until;
      cases.add(
          new ColonyCase(
              c.getKey(),
              model,
              start(taken.get(0).date(), given),
              now,
              checked("--until", until, now),
              taken,
              given,
              thresholds,
              Priors.defaults()));
    }
    notes.add(decided(cases));
    return new Cases(cases, Optional.empty(), notes);
  }

  /** Plans begin after the last wash, which may be long ago. */
  private static String decided(List<ColonyCase> cases) {
    return cases.size() == 1
        ? "Plans begin on the day after the last wash or treatment: "
            + Plain.day(cases.get(0).now())
            + "."
        : "Plans begin on the day after each colony's last wash or treatment.";
  }

  private static void refuse(String option) {
    throw new Refusal(
        option
            + " cannot stand beside --study, which says it itself; change the study, or leave one"
            + " of the two out");
  }

  /** The usual last day to look at. */
  @FunctionalInterface
  interface Horizon {
    LocalDate of(YearStages stages, LocalDate now);

    /** When the winter bees of the next winter have been raised. */
    static LocalDate winterBees(YearStages stages, LocalDate now) {
      return stages.raised(now);
    }

    /** The next spring, when a colony has the fewest bees and shows whether it came through. */
    static LocalDate spring(YearStages stages, LocalDate now) {
      return stages.springLow(ColonyModel.in(stages.climate()), now).day();
    }
  }

  /** Reads everything that a study and the options name. */
  Cases ofStudy(Study study, Horizon horizon) {
    String name = study.colony().name();
    Map<String, List<Wash>> byColony = studyWashes(study);
    List<String> alike = LookalikeNames.between(Map.of(name, "the study"), places);
    notes.addAll(alike);
    places.put(name, "the study");
    readGiven(Set.of(name));
    List<Wash> taken = byColony.getOrDefault(study.colony().name(), List.of());
    if (taken.isEmpty() && study.colony().infestation().isEmpty()) {
      throw new Refusal(
          "the study \""
              + study.title()
              + "\" has no washes of colony \""
              + study.colony().name()
              + "\" and no infestation; give one of them"
              + (byColony.isEmpty()
                  ? ""
                  : "; the table of washes has " + String.join(", ", byColony.keySet()))
              + (alike.isEmpty() ? "" : ". " + String.join(" ", alike)));
    }
    if (!taken.isEmpty() && taken.get(0).date().isBefore(study.start())) {
      throw new OutOfRange(
          "date of the first wash of colony \"" + study.colony().name() + "\"",
          taken.get(0).date().toString(),
          "the study's start, "
              + study.start()
              + ", or later; set \"start\" of the study to an earlier day or take the wash out");
    }
    List<Control> further = given(study.colony().name());
    List<Control> given = new ArrayList<>(study.given());
    given.addAll(further);
    if (start(study.start(), further).isBefore(study.start())) {
      throw new OutOfRange(
          "--given",
          start(study.start(), further).toString(),
          "treatments from the study's start, "
              + study.start()
              + ", onwards; what the study says of the colony holds on that day");
    }
    LocalDate now =
        taken.isEmpty()
            ? dayAfter(study.start().minusDays(1), further)
            : dayAfter(taken.get(taken.size() - 1).date(), further);
    LocalDate until = options.until == null ? study.until() : options.until;
    Priors priors = StudyPriors.of(study);
    ColonyCase c =
        new ColonyCase(
            study.colony().name(),
            options.dated(study.model()),
            study.start(),
            now,
            checked(options.until == null ? "\"until\" of the study" : "--until", until, now),
            taken,
            given,
            options.threshold == null
                ? study.thresholds().value()
                : ThresholdLibrary.find(options.threshold),
            priors);
    return new Cases(List.of(c), Optional.of(study), notes);
  }

  private Map<String, List<Wash>> studyWashes(Study study) {
    if (options.washes().isPresent()) {
      return only(washes(options.washes().get()));
    }
    if (study.washes().isEmpty()) {
      return Map.of();
    }
    Referred<Source> attached = study.washes().get();
    try (InputStream in = attached.value().open()) {
      return noted(WashFile.read(in, attached.written(), LocalDate.now(desk.clock())));
    } catch (IOException e) {
      throw UserFile.cannotRead(attached.written(), e);
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

  /** Reads the table of treatments, when there is one. */
  private void readGiven(Set<String> colonies) {
    if (options.given == null) {
      return;
    }
    String name = options.given.toString();
    LocalDate today = LocalDate.now(desk.clock());
    TreatmentFile file =
        UserFile.read(name, "the table of treatments", in -> TreatmentFile.read(in, name, today));
    notes.addAll(file.notes());
    notes.addAll(file.unused(colonies));
    notes.addAll(
        LookalikeNames.between(LookalikeNames.lines(file.colonies(), " of " + name), places));
    treatments = Optional.of(file);
  }

  private List<Control> given(String colony) {
    return treatments.map(t -> t.of(colony)).orElse(List.of());
  }

  /** The first day that is followed: no later than the first treatment. */
  private static LocalDate start(LocalDate first, List<Control> given) {
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

  private Map<String, List<Wash>> noted(WashFile file) {
    notes.addAll(file.notes());
    places.putAll(LookalikeNames.lines(file.colonies(), " of " + file.name()));
    return file.byColony();
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

  private static LocalDate checked(String field, LocalDate until, LocalDate now) {
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
    return until;
  }

  private static Surroundings surroundings(String word) {
    return KnownWords.read(
        "--neighbours", word.toLowerCase(Locale.ROOT), Surroundings.values(), Surroundings::word);
  }
}
