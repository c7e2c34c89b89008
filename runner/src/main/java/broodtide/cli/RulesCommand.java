package broodtide.cli;

import broodtide.assessment.Assessment;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.Horizon;
import broodtide.decision.MemoryNeed;
import broodtide.decision.Rule;
import broodtide.decision.RuleResult;
import broodtide.decision.RuleText;
import broodtide.decision.RuleTrial;
import broodtide.decision.WashRound;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import broodtide.report.RulePicture;
import broodtide.results.ResultsFile;
import broodtide.terminal.Table;
import broodtide.words.Digits;
import broodtide.words.Odds;
import broodtide.words.Plain;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How would a monitoring rule fare? */
@Command(
    name = "rules",
    mixinStandardHelpOptions = true,
    header = "How well a rule for treating works.",
    description = {
      "Tries monitoring rules over the season: wash regularly, treat when over a threshold."
          + " Shows how often a rule misses, treats needlessly or loses the colony.",
      "",
      "Rules: 'never'. 'N with CONTROL' treats when a wash reads over N mites per 100 bees."
          + " 'threshold with CONTROL' goes by the treatment threshold of the day. 'wait DAYS'"
          + " after either sets the days from one treatment to the next. 'on DATE with CONTROL and"
          + " on DATE with CONTROL' treats by the calendar."
    },
    footer = {
      "  broodtide rules washes.csv --climate temperate",
      "  broodtide rules washes.csv --climate temperate \\",
      "      --rule never --rule '2 with formic-slow'"
    })
final class RulesCommand implements Callable<Integer> {
  private static final String NEVER = "never";

  private final CommandContext desk;
  @Mixin private ColonyOptions colony = new ColonyOptions();
  @Mixin private RunOptions run = new RunOptions();

  @Option(
      names = "--rule",
      paramLabel = "RULE",
      description = "A rule; may be given several times. Default: five usual ones.")
  private List<String> rules = new ArrayList<>();

  @Option(
      names = "--with",
      paramLabel = "CONTROL",
      completionCandidates = KnownWords.Controls.class,
      description = "Control of the usual rules. Default: ${DEFAULT-VALUE}.",
      defaultValue = "formic-slow")
  private String with = "formic-slow";

  @Option(
      names = "--from",
      paramLabel = "DATE",
      description = "First wash. Default: one interval after the last one.")
  private @Nullable LocalDate from;

  @Option(
      names = "--to",
      paramLabel = "DATE",
      description = "No wash after this day. Default: when the winter bees have been raised.")
  private @Nullable LocalDate to;

  @Option(
      names = "--every",
      paramLabel = "DAYS",
      description = "Days from wash to wash. Default: ${DEFAULT-VALUE}.",
      defaultValue = "30")
  private int every = 30;

  @Option(
      names = "--bees",
      paramLabel = "N",
      description = "Bees in a wash. Default: ${DEFAULT-VALUE}.",
      defaultValue = "300")
  private int bees = 300;

  RulesCommand(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    List<Rule> given = rules.stream().map(RuleText::read).toList();
    CaseReader.Cases cases = new CaseReader(desk, colony).read(Horizon::spring);
    return new DecisionCommandRun(desk, run, "rules")
        .decide(
            cases,
            c ->
                MemoryNeed.ofRules(
                    c,
                    cases.cases().size(),
                    given.isEmpty() ? usual(c).size() : given.size(),
                    mostWashes(c)),
            "wash less often with --every, shorten the forecast with --until",
            (c, workers, file, out) ->
                play(c, given.isEmpty() ? usual(c) : withNone(given), workers, file, out));
  }

  /** What no rule leads to is always beside the others. */
  private static List<Rule> withNone(List<Rule> given) {
    Rule never = RuleText.read(NEVER);
    return given.stream().anyMatch(r -> r.name().equals(never.name()))
        ? given
        : Stream.concat(Stream.of(never), given.stream()).toList();
  }

  private List<Rule> usual(ColonyCase c) {
    LocalDate harvest = c.stages().afterHarvest(c.now());
    List<Rule> out = new ArrayList<>();
    out.add(RuleText.read(NEVER));
    for (String threshold : List.of("1", "3", "threshold")) {
      out.add(RuleText.read(threshold + " with " + with));
    }
    if (harvest.isBefore(c.until())) {
      out.add(RuleText.read("on " + harvest + " with " + with));
    }
    return out;
  }

  private void play(
      ColonyCase c, List<Rule> played, Workers workers, ResultsFile file, DecisionCommandRun out) {
    LocalDate first = from == null ? c.now().minusDays(1).plusDays(every) : from;
    LocalDate last = to == null ? usualLast(c, first) : to;
    WashRound round = WashRound.usual(first, last, every, bees);
    Assessment assessment = out.assess(c, workers);
    SeasonPosterior posterior = assessment.posterior();
    RuleTrial trial =
        out.watched(
            "playing rules for " + c.colony(),
            progress -> RuleTrial.of(c, posterior, round, played, run.seed, workers, progress));
    Comparison usual = out.usual(assessment, file);
    file.add(trial);
    say(trial, usual, out);
    if (!trial.results().isEmpty()) {
      out.draw(
          c,
          RulePicture.of(trial),
          "Further down is better, further left is less treating. The line joins the rules that no"
              + " other rule beats in both.");
    }
  }

  private int mostWashes(ColonyCase c) {
    long days = ChronoUnit.DAYS.between(c.now(), c.until());
    return Math.toIntExact(days / Math.max(1, every) + 1);
  }

  private static LocalDate usualLast(ColonyCase c, LocalDate first) {
    LocalDate last =
        c.winterBeesRaised().isBefore(c.until()) ? c.winterBeesRaised() : c.until().minusDays(1);
    return last.isBefore(first) ? first : last;
  }

  private static void say(RuleTrial trial, Comparison usual, DecisionCommandRun out) {
    Optional<RuleResult> fewest =
        trial.results().stream()
            .min(Comparator.comparingDouble((RuleResult r) -> RuleResult.mean(r.lost())));
    out.open(
        fewest
            .map(best -> sentence(best, trial.results()))
            .orElse("None of these rules can be tried."),
        usual);
    out.show(table(trial), "Each rule, per colony and season.");
    ColonyCase c = trial.colony();
    List<LocalDate> days = trial.days();
    out.mention(
        "Played from "
            + Plain.day(c.now())
            + " to "
            + Plain.day(c.until())
            + " with "
            + days.size()
            + (days.size() == 1 ? " wash" : " washes")
            + " of "
            + trial.round().bees()
            + " bees, "
            + (days.size() == 1
                ? "on " + Plain.shortDay(days.get(0))
                : Plain.shortDay(days.get(0)) + " to " + Plain.shortDay(days.get(days.size() - 1)))
            + ". Treated: treatments begun. Missed: washes of a colony over the treatment threshold"
            + " that was not treated then or shortly before. Needless: treatments begun while it"
            + " was not over. Blocked: treatments that the rule asked for and that supers,"
            + " temperature or brood ruled out. These are per colony and season. Brood: cells of"
            + " the winter-bee brood with a mite. Lost: chance of winter loss.");
    fewest.map(best -> faults(best)).filter(words -> !words.isEmpty()).ifPresent(out::say);
    out.explain(usual);
    unjudged(trial).ifPresent(out::say);
    for (RuleResult r : trial.results()) {
      r.objections().forEach(o -> out.say("Note: " + o + "."));
    }
    trial.refused().forEach(r -> out.say("Left out: " + r.reason() + "."));
  }

  private static String sentence(RuleResult best, List<RuleResult> all) {
    String loss = Digits.chance(RuleResult.mean(best.lost()));
    if (all.size() > 1
        && all.stream().allMatch(r -> Digits.chance(RuleResult.mean(r.lost())).equals(loss))) {
      return "No rule stands out: winter loss is " + loss + " with each of them.";
    }
    return (all.size() == 1 ? "With \"" : "Rule \"")
        + best.rule().name()
        + (all.size() == 1 ? "\" winter loss is " : "\" loses fewest colonies: ")
        + loss
        + ".";
  }

  /** How often the best rule misses and treats needlessly, as far as there is a threshold. */
  private static String faults(RuleResult best) {
    double misses = RuleResult.shareWithAny(best.misses());
    double needless = RuleResult.shareWithAny(best.needless());
    String missed =
        Double.isNaN(misses)
            ? ""
            : " It misses a colony over the treatment threshold " + Odds.seasons(misses) + ".";
    String idle =
        Double.isNaN(needless) ? "" : " It treats needlessly " + Odds.seasons(needless) + ".";
    String both = missed + idle;
    return both.isEmpty() ? "" : "About rule \"" + best.rule().name() + "\":" + both;
  }

  /** The wash days on which nothing can be missed or needless. */
  private static Optional<String> unjudged(RuleTrial trial) {
    List<LocalDate> days = trial.days();
    ColonyCase c = trial.colony();
    long without = days.stream().filter(d -> c.thresholdOn(d).isEmpty()).count();
    if (without == 0) {
      return Optional.empty();
    }
    return Optional.of(
        "There is no treatment threshold on "
            + (without == days.size() ? "any" : without + " of the " + days.size())
            + (without == 1 && days.size() == 1 ? " wash day " : " wash days ")
            + c.thresholds().where()
            + "; nothing counts as missed or needless there, and a rule that goes by the threshold"
            + " does not treat.");
  }

  private static Table table(RuleTrial trial) {
    Table table =
        Table.of(
            Table.Column.sentences("Rule"),
            Table.Column.numbers("treated"),
            Table.Column.numbers("missed"),
            Table.Column.numbers("needless"),
            Table.Column.numbers("blocked"),
            Table.Column.numbers("brood"),
            Table.Column.numbers("lost"));
    for (RuleResult r : trial.results()) {
      boolean none = Double.isNaN(r.winterBrood()[0]);
      table =
          table.row(
              r.rule().name(),
              one(RuleResult.mean(r.treatments())),
              known(RuleResult.mean(r.misses())),
              known(RuleResult.mean(r.needless())),
              one(RuleResult.mean(r.blocked())),
              none ? "-" : Digits.percent(r.winterBroodOfLiving().median()),
              Digits.chance(RuleResult.mean(r.lost())));
    }
    return table;
  }

  private static String known(double value) {
    return Double.isNaN(value) ? "-" : one(value);
  }

  private static String one(double value) {
    return value > 0 && value < 0.05 ? "<0.1" : String.format(Locale.ROOT, "%.1f", value);
  }
}
