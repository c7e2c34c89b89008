package broodtide.cli;

import broodtide.assessment.Assessment;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.Horizon;
import broodtide.assessment.Outcome;
import broodtide.assessment.UsualPlans;
import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.control.Plan;
import broodtide.decision.MemoryNeed;
import broodtide.decision.WashWorth;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import broodtide.measure.OutOfRange;
import broodtide.report.WashWorthPicture;
import broodtide.report.WindowPicture;
import broodtide.results.ResultsFile;
import broodtide.terminal.Table;
import broodtide.words.Digits;
import broodtide.words.Odds;
import broodtide.words.OutcomeWords;
import broodtide.words.Plain;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Wash again first, or decide today? */
@Command(
    name = "worth",
    mixinStandardHelpOptions = true,
    header = "What another wash is worth.",
    description = {
      "What another wash is worth: the expected gain from washing again in some"
          + " weeks and deciding by that count, compared with deciding today."
    },
    footer = {
      "  broodtide worth washes.csv --climate temperate",
      "  broodtide worth washes.csv --climate temperate --weeks 3 --with thymol"
    })
final class WorthCommand implements Callable<Integer> {
  /** No outcome can be bettered by more, whatever it is counted in. */
  private static final double MOST_COST = 100;

  private final CommandContext desk;
  @Mixin private ColonyOptions colony = new ColonyOptions();
  @Mixin private RunOptions run = new RunOptions();

  @Option(
      names = "--weeks",
      paramLabel = "N,M",
      split = ",",
      description = "Weeks from the last wash to the next. Default: ${DEFAULT-VALUE}.",
      defaultValue = "2,4,6")
  private List<Integer> weeks = new ArrayList<>();

  @Option(
      names = "--bees",
      paramLabel = "N",
      description = "Bees in the wash. Default: ${DEFAULT-VALUE}.",
      defaultValue = "300")
  private int bees = 300;

  @Option(
      names = "--outcome",
      paramLabel = "OUTCOME",
      description = "What is judged: winter-brood, infestation or lost. Default: ${DEFAULT-VALUE}.",
      completionCandidates = KnownWords.Outcomes.class,
      defaultValue = "lost")
  private String outcome = "lost";

  @Option(
      names = "--cost",
      paramLabel = "X",
      description =
          "How much a treatment must improve the outcome to be worth the effort: in 100 cells,"
              + " mites per 100 bees, or in 100 colonies. Default: 5, 1 and 2.")
  private @Nullable Double cost;

  @Option(
      names = "--with",
      paramLabel = "CONTROL",
      completionCandidates = KnownWords.Controls.class,
      description = "The treatment to decide about. Default: one that suits each date.")
  private @Nullable String with;

  WorthCommand(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    Optional<ControlTemplate> control = Optional.ofNullable(with).map(Catalog::control);
    Outcome judged = OutcomeOption.named(outcome);
    if (cost != null) {
      OutOfRange.check("--cost", cost, 0, MOST_COST, judged.title());
    }
    double each = cost == null ? judged.usualCost() : cost / judged.shownTimes();
    for (int w : weeks) {
      if (w < 1 || w > 52) {
        throw new Refusal("--weeks has " + w + "; expected 1 to 52");
      }
    }
    if (bees < 50 || bees > 1000) {
      throw new Refusal("--bees is " + bees + "; expected 50 to 1000");
    }
    CaseReader.Cases cases = new CaseReader(desk, colony).read(Horizon::spring);
    return new DecisionCommandRun(desk, run, "worth")
        .decide(
            cases,
            c ->
                MemoryNeed.ofWashWorth(
                    c, cases.cases().size(), 2 * UsualPlans.of(c, control).size(), bees),
            "wash fewer bees with --bees, shorten the forecast with --until",
            (c, workers, file, out) -> weigh(c, control, judged, each, workers, file, out));
  }

  private void weigh(
      ColonyCase c,
      Optional<ControlTemplate> control,
      Outcome judged,
      double each,
      Workers workers,
      ResultsFile file,
      DecisionCommandRun out) {
    Assessment assessment = out.assess(c, workers);
    SeasonPosterior posterior = assessment.posterior();
    List<Plan> today = UsualPlans.of(c, control);
    Comparison usual = out.usual(assessment, file);
    String preferred = usual.decision().ranking().map(r -> r.best().plan().name()).orElse("");
    List<WashWorth> worth =
        out.watched(
            "weighing washes of " + c.colony(),
            line -> {
              List<WashWorth> weighed = new ArrayList<>();
              for (int i = 0; i < weeks.size(); i++) {
                LocalDate day = c.now().minusDays(1).plusWeeks(weeks.get(i));
                if (day.isBefore(c.until())) {
                  List<Plan> later =
                      UsualPlans.of(c.decidingOn(day), control, "on " + Plain.shortDay(day));
                  weighed.add(
                      WashWorth.of(
                          c, posterior, today, later, day, bees, judged, each, preferred, workers));
                }
                line.at(i + 1, weeks.size());
              }
              return weighed;
            });
    for (int w : weeks) {
      LocalDate day = c.now().minusDays(1).plusWeeks(w);
      if (!day.isBefore(c.until())) {
        out.say("Left out: a wash in " + w + " weeks lies after the last day, " + c.until() + ".");
      }
    }
    file.addWorth(c, worth);
    worth.stream()
        .max(Comparator.comparingDouble(WashWorth::gain))
        .ifPresent(
            best -> {
              say(best, worth, usual, out);
              out.draw(
                  c,
                  WashWorthPicture.of(best, worth),
                  "Above the line of 0 washing again is better than deciding today. Below: what to"
                      + " do at each count.");
            });
  }

  private static void say(
      WashWorth best, List<WashWorth> all, Comparison usual, DecisionCommandRun out) {
    Outcome o = best.outcome();
    boolean gains = best.gain() * o.shownTimes() >= 0.05;
    out.open(
        gains
            ? "Wash again on "
                + Plain.shortDay(best.washDay())
                + ": it gains "
                + OutcomeWords.amount(o, best.gain())
                + " on average."
            : best.delay() * o.shownTimes() > 0.05
                ? "Decide today: waiting for another wash costs more than it can tell."
                : "Decide today: another wash would hardly change what to do.",
        usual);
    Table table =
        Table.of(
            Table.Column.words("Wash on"),
            Table.Column.numbers("gain"),
            Table.Column.numbers("delay alone"),
            Table.Column.numbers("knowing all"));
    for (WashWorth w : all) {
      table =
          table.row(
              Plain.shortDay(w.washDay()),
              WindowPicture.signed(o, w.gain()),
              WindowPicture.signed(o, -w.delay()),
              WindowPicture.signed(o, w.today() - w.knowing()));
    }
    out.show(table, "What each wash gains over deciding today.");
    if (gains) {
      for (WashWorth.Decision d : best.decisions()) {
        out.say(
            counts(d, best)
                + " in "
                + best.bees()
                + " bees on "
                + Plain.shortDay(best.washDay())
                + " ("
                + Odds.words(Math.min(1, d.chance()))
                + "): "
                + d.plan().name()
                + ".");
      }
    }
    out.mention(
        "Gain: what the wash gains over deciding today, in "
            + o.title()
            + ". Delay alone: what putting off the decision does by itself. Knowing all: the gain"
            + " if you knew the colony, and how well each treatment will work, on that day. Each"
            + " treatment costs "
            + Digits.plain(best.cost() * o.shownTimes())
            + " of the same for effort, money and stress on bees; --cost changes that.");
    out.explain(usual);
  }

  private static String counts(WashWorth.Decision d, WashWorth w) {
    boolean last = w.decisions().get(w.decisions().size() - 1).from() == d.from();
    if (last && d.from() == 0) {
      return "Any count of mites";
    }
    return last
        ? d.from() + (d.from() == 1 ? " mite or more" : " mites or more")
        : d.from() == d.to()
            ? Digits.counted(d.from(), "mite")
            : d.from() + " to " + d.to() + " mites";
  }
}
