package broodtide.cli;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.CountReading;
import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.control.MiticideCourse;
import broodtide.decision.ApiaryTreatmentCheck;
import broodtide.decision.CountedEfficacy;
import broodtide.decision.CountedEfficacy.Count;
import broodtide.decision.MemoryNeed;
import broodtide.decision.ResistanceCheck;
import broodtide.decision.Shortfall;
import broodtide.decision.TreatmentCheck;
import broodtide.engine.Workers;
import broodtide.report.TreatmentPicture;
import broodtide.results.ResultsFile;
import broodtide.wash.Wash;
import broodtide.words.Answer;
import broodtide.words.Plain;
import broodtide.words.TreatmentWords;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Did the treatment work? */
@Command(
    name = "worked",
    mixinStandardHelpOptions = true,
    header = "Did the treatment work?",
    description = {
      "Did the treatment work? Judged from washes before and after, and against an"
          + " untreated neighbour if there is one. Corrected for what the season would have"
          + " done anyway."
    },
    footer = {
      "  broodtide worked washes.csv --climate temperate --treated 2026-08-10 \\",
      "      --with formic-slow --neighbour \"Hive 2\""
    })
final class WorkedCommand implements Callable<Integer> {
  /** Level of the intervals, as everywhere. */
  private static final double LEVEL = 0.9;

  /** Days by which a neighbour's wash may lie off. Choice. */
  private static final int NEAR = 10;

  private final CommandContext desk;
  @Mixin private ColonyOptions colony = new ColonyOptions();
  @Mixin private RunOptions run = new RunOptions();

  @Option(
      names = "--treated",
      paramLabel = "DATE",
      required = true,
      description = "First day of the treatment.")
  private LocalDate treated = LocalDate.MIN;

  @Option(
      names = "--with",
      paramLabel = "CONTROL",
      completionCandidates = KnownWords.Controls.class,
      required = true,
      description = "The treatment, by its name in the library or the path of a file.")
  private String with = "";

  @Option(
      names = "--neighbour",
      paramLabel = "COLONY",
      description = "An untreated colony of the same table, to compare the treated one with.")
  private @Nullable String neighbour;

  WorkedCommand(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    ControlTemplate template = Catalog.control(with);
    MiticideCourse course =
        template
            .at(treated)
            .course()
            .orElseThrow(
                () ->
                    new Refusal(
                        "--with "
                            + with
                            + " is not a miticide; this command judges treatments with"
                            + " miticides"));
    String wanted = colony.colony;
    colony.colony = null;
    CaseReader.Cases all =
        new CaseReader(desk, colony).lookingBack("worked", (stages, now) -> now.plusDays(1));
    Optional<ColonyCase> beside = beside(all);
    List<ColonyCase> judged =
        all.cases().stream()
            .filter(c -> wanted == null || c.colony().equals(wanted))
            .filter(c -> beside.isEmpty() || !c.colony().equals(beside.get().colony()))
            .toList();
    if (judged.isEmpty()) {
      throw new Refusal(
          "no colony is left to judge"
              + (wanted == null ? "" : " by --colony " + wanted)
              + "; the table has "
              + names(all));
    }
    List<String> notes = new ArrayList<>(all.notes());
    if (judged.size() > 1) {
      notes.add(
          0,
          "Taken as given to every colony of the table: "
              + String.join(", ", judged.stream().map(ColonyCase::colony).toList())
              + "; --colony names the one that was treated.");
    }
    CaseReader.Cases cases = new CaseReader.Cases(judged, all.study(), notes);
    List<TreatmentCheck> checks = new ArrayList<>();
    return new DecisionCommandRun(desk, run, "worked")
        .decide(
            cases,
            c -> MemoryNeed.ofTreatmentCheck(c, cases.cases().size()),
            "leave out washes long before the treatment",
            (c, workers, file, out) -> {
              checks.add(judge(c, beside, course, template, workers, file, out));
              if (checks.size() == judged.size()) {
                toCheck(checks, template, out);
                ApiaryTreatmentCheck.of(checks)
                    .ifPresent(a -> together(a, checks, template, file, out));
              }
            });
  }

  private Optional<ColonyCase> beside(CaseReader.Cases all) {
    if (neighbour == null) {
      return Optional.empty();
    }
    Optional<ColonyCase> found =
        all.cases().stream().filter(c -> c.colony().equals(neighbour)).findFirst();
    if (found.isEmpty()) {
      throw new Refusal(
          "--neighbour is \"" + neighbour + "\"; the table of washes has " + names(all));
    }
    return found;
  }

  private static String names(CaseReader.Cases all) {
    return String.join(", ", all.cases().stream().map(ColonyCase::colony).toList());
  }

  private TreatmentCheck judge(
      ColonyCase c,
      Optional<ColonyCase> beside,
      MiticideCourse course,
      ControlTemplate template,
      Workers workers,
      ResultsFile file,
      DecisionCommandRun out) {
    TreatmentCheck check =
        out.watched(
            "reading the washes of " + c.colony(),
            line -> TreatmentCheck.of(c, course, run.effort(), workers, line));
    Optional<CountedEfficacy> counted =
        CountedEfficacy.alone(count(check.before()), count(check.after()), LEVEL);
    Optional<CountedEfficacy> against = beside.flatMap(n -> against(check, n));
    Optional<ResistanceCheck> resistance =
        fellShort(check.verdict(), template)
            ? ResistanceCheck.of(check, template)
            : Optional.empty();
    file.add(check, counted, against, resistance);
    out.say(TreatmentWords.verdict(check, template.name()));
    TreatmentWords.whatWouldTell(check).ifPresent(out::say);
    out.say(TreatmentWords.counts(check, counted));
    beside.ifPresent(n -> out.say(TreatmentWords.neighbour(check.verdict(), n.colony(), against)));
    out.say(standing(c, check.after()));
    out.draw(
        c,
        TreatmentPicture.of(check),
        "Dots: washes with 90 % intervals. Solid: the season as the washes tell it; dashed: the"
            + " same colonies without the treatment. Below or beside: how likely each share of"
            + " mites taken is, before the washes and with them.");
    List<String> doubts = Shortfall.doubts(check);
    if (!doubts.isEmpty()) {
      out.say("Note: " + String.join("; ", doubts) + ".");
    }
    resistance.map(TreatmentWords::resistance).ifPresent(out::say);
    return check;
  }

  /** What may lie behind treatments that fell short, once for the hives with the same reasons. */
  private static void toCheck(
      List<TreatmentCheck> checks, ControlTemplate template, DecisionCommandRun out) {
    Map<List<String>, List<String>> hives = new LinkedHashMap<>();
    for (TreatmentCheck check : checks) {
      if (check.verdict() == TreatmentCheck.Verdict.FELL_SHORT) {
        hives
            .computeIfAbsent(Shortfall.reasons(check, template), r -> new ArrayList<>())
            .add(check.colony().colony());
      }
    }
    hives.forEach(
        (reasons, names) -> {
          String whose = checks.size() == 1 ? "" : " for " + String.join(", ", names);
          out.say("To check" + whose + ", in this order:");
          reasons.forEach(r -> out.say("- " + r + "."));
        });
  }

  /** Says what the hives tell together. */
  private void together(
      ApiaryTreatmentCheck apiary,
      List<TreatmentCheck> checks,
      ControlTemplate template,
      ResultsFile file,
      DecisionCommandRun out) {
    Optional<ResistanceCheck> resistance =
        fellShort(apiary.verdict(), template)
            ? ResistanceCheck.of(apiary, checks.get(0), template)
            : Optional.empty();
    file.add(apiary, resistance);
    out.say(TreatmentWords.apiary(apiary, checks.size()));
    resistance.map(TreatmentWords::resistance).ifPresent(out::say);
  }

  /** Whether resistance is to be spoken of; not where the user reckons with it already. */
  private boolean fellShort(TreatmentCheck.Verdict verdict, ControlTemplate template) {
    return verdict == TreatmentCheck.Verdict.FELL_SHORT
        && !colony.resistant.contains(template.substance().orElse(""));
  }

  /** Whether the later wash stands over the treatment threshold, whatever the treatment did. */
  private static String standing(ColonyCase c, Wash after) {
    CountReading r = CountReading.of(after, c.model().climate(), c.thresholds());
    return r.threshold().isEmpty()
        ? Answer.noThreshold(after.date(), c.thresholds()) + "."
        : "By the wash of "
            + Plain.day(after.date())
            + " "
            + WashWords.above(r.chanceAbove())
            + "; the threshold is "
            + Answer.thresholdWords(c.thresholds(), r.threshold().getAsDouble())
            + ".";
  }

  private static Count count(Wash w) {
    return new Count(w.mites(), w.exposure());
  }

  private static Optional<CountedEfficacy> against(TreatmentCheck check, ColonyCase beside) {
    return CountedEfficacy.againstNeighbour(
        count(check.before()),
        count(check.after()),
        count(near(beside, check.before().date())),
        count(near(beside, check.after().date())),
        LEVEL);
  }

  private static Wash near(ColonyCase beside, LocalDate day) {
    return beside.washes().stream()
        .min(Comparator.comparingLong(w -> apart(w, day)))
        .filter(w -> apart(w, day) <= NEAR)
        .orElseThrow(
            () ->
                new Refusal(
                    "neighbour \""
                        + beside.colony()
                        + "\" has no wash within "
                        + NEAR
                        + " days of "
                        + day
                        + ", the day of the treated colony's wash"));
  }

  private static long apart(Wash w, LocalDate day) {
    return Math.abs(w.date().toEpochDay() - day.toEpochDay());
  }
}
