package broodtide.cli;

import broodtide.compare.ColonyCase;
import broodtide.compare.YearStages;
import broodtide.engine.ColonyModel;
import broodtide.fit.Priors;
import broodtide.measure.OutOfRange;
import broodtide.mite.Immigration;
import broodtide.season.Climate;
import broodtide.study.Assumptions;
import broodtide.study.BadInput;
import broodtide.study.Fault;
import broodtide.study.Library;
import broodtide.study.LimitLibrary;
import broodtide.study.Source;
import broodtide.study.Study;
import broodtide.study.Surroundings;
import broodtide.study.WashFile;
import broodtide.wash.LimitSet;
import broodtide.wash.Wash;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Turns options and files into cases, one per colony. */
final class CaseReader {
  /** Limits that hold when none are named. */
  private static final String USUAL_LIMITS = "common-practice";

  private final Desk desk;
  private final ColonyOptions options;
  private final List<String> notes = new ArrayList<>();

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
  record Cases(List<ColonyCase> cases, Optional<Study> study, List<String> notes) {}

  /** Reads everything the options name. */
  Cases read(Horizon horizon) {
    if (options.study != null) {
      return ofStudy(Library.study(options.study), horizon);
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
              + String.join(", ", Library.names(Library.Shelf.CLIMATES)));
    }
    Climate climate = Library.climate(options.climate);
    Surroundings around = surroundings(options.neighbours == null ? "sparse" : options.neighbours);
    Immigration arrivals = around.immigration(Assumptions.usual());
    ColonyModel model =
        ColonyModel.in(options.south ? climate.inSouth() : climate)
            .with(options.south ? arrivals.inSouth() : arrivals);
    if (options.neighbours == null) {
      notes.add("Neighbouring colonies are taken as sparse; --neighbours changes that.");
    }
    LimitSet limits = limits(options.limits == null ? USUAL_LIMITS : options.limits);
    List<ColonyCase> cases = new ArrayList<>();
    for (Map.Entry<String, List<Wash>> c : washes(file).entrySet()) {
      List<Wash> taken = c.getValue();
      LocalDate now = taken.get(taken.size() - 1).date().plusDays(1);
      LocalDate until =
          options.until == null ? horizon.of(new YearStages(model.climate()), now) : options.until;
      cases.add(
          new ColonyCase(
              c.getKey(),
              model,
              taken.get(0).date(),
              now,
              checked(until, now),
              taken,
              List.of(),
              limits,
              Priors.defaults()));
    }
    return new Cases(cases, Optional.empty(), notes);
  }

  /** The usual last day to look at. */
  @FunctionalInterface
  interface Horizon {
    LocalDate of(YearStages stages, LocalDate now);

    /** When the winter bees of the next winter have been raised. */
    static LocalDate winterBees(YearStages stages, LocalDate now) {
      return stages.endOfWinterBees(now.plusDays(28));
    }

    /** Ten weeks after that, so that late treatments show. */
    static LocalDate afterwards(YearStages stages, LocalDate now) {
      return winterBees(stages, now).plusDays(70);
    }

    /** Half a year after that, when winter is over. */
    static LocalDate wintered(YearStages stages, LocalDate now) {
      return winterBees(stages, now).plusDays(182);
    }
  }

  private Cases ofStudy(Study study, Horizon horizon) {
    Map<String, List<Wash>> byColony = studyWashes(study);
    List<Wash> taken = byColony.getOrDefault(study.colony().name(), List.of());
    if (taken.isEmpty() && study.colony().infestation().isEmpty()) {
      throw new Refusal(
          "the study \""
              + study.title()
              + "\" has no washes of colony \""
              + study.colony().name()
              + "\" and no infestation; give one of them");
    }
    LocalDate now =
        taken.isEmpty() ? study.start() : taken.get(taken.size() - 1).date().plusDays(1);
    LocalDate until = options.until == null ? study.until() : options.until;
    Priors priors = StudyPriors.of(study);
    ColonyCase c =
        new ColonyCase(
            study.colony().name(),
            study.model(),
            study.start(),
            now,
            checked(until, now),
            taken,
            study.given(),
            options.limits == null ? study.limits().value() : limits(options.limits),
            priors);
    return new Cases(List.of(c), Optional.of(study), notes);
  }

  private Map<String, List<Wash>> studyWashes(Study study) {
    if (options.washes().isPresent()) {
      return washes(options.washes().get());
    }
    if (study.washes().isEmpty()) {
      return Map.of();
    }
    Study.Referred<Source> attached = study.washes().get();
    try (InputStream in = attached.value().open()) {
      return noted(WashFile.read(in, attached.written(), LocalDate.now(desk.clock())));
    } catch (IOException e) {
      throw cannotRead(attached.written(), e);
    }
  }

  private Map<String, List<Wash>> washes(String name) {
    LocalDate today = LocalDate.now(desk.clock());
    try {
      if (name.equals("-")) {
        return only(noted(WashFile.read(desk.in(), "standard input", today)));
      }
      try (InputStream in = Files.newInputStream(Path.of(name))) {
        return only(noted(WashFile.read(in, name, today)));
      }
    } catch (IOException e) {
      throw cannotRead(name, e);
    }
  }

  private static BadInput cannotRead(String name, IOException e) {
    String why =
        e instanceof NoSuchFileException
            ? "there is no such file"
            : "cannot be read: " + e.getMessage();
    return BadInput.of(Fault.of(name, why));
  }

  private Map<String, List<Wash>> noted(WashFile file) {
    notes.addAll(file.notes());
    return file.byColony();
  }

  private Map<String, List<Wash>> only(Map<String, List<Wash>> all) {
    if (options.colony == null) {
      return all;
    }
    List<Wash> one = all.get(options.colony);
    if (one == null) {
      throw new OutOfRange("--colony", options.colony, "one of " + String.join(", ", all.keySet()));
    }
    return Map.of(options.colony, one);
  }

  private static LocalDate checked(LocalDate until, LocalDate now) {
    if (!until.isAfter(now)) {
      throw new OutOfRange("--until", until.toString(), "a day after " + now);
    }
    if (until.isAfter(now.plusYears(3))) {
      throw new OutOfRange("--until", until.toString(), "at most three years after " + now);
    }
    return until;
  }

  private static LimitSet limits(String name) {
    return LimitLibrary.shipped(name);
  }

  private static Surroundings surroundings(String word) {
    for (Surroundings s : Surroundings.values()) {
      if (s.word().equals(word.toLowerCase(Locale.ROOT))) {
        return s;
      }
    }
    throw new OutOfRange("--neighbours", word, "isolated, sparse or dense");
  }
}
