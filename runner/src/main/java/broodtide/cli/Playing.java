package broodtide.cli;

import broodtide.compare.ColonyCase;
import broodtide.compare.Comparison;
import broodtide.compare.PlanRun;
import broodtide.compare.ResultsFile;
import broodtide.compare.Spread;
import broodtide.control.Plan;
import broodtide.engine.Workers;
import broodtide.fit.Agreement;
import broodtide.fit.Learned;
import broodtide.fit.SeasonPosterior;
import broodtide.report.Digits;
import broodtide.report.Outputs;
import broodtide.report.SeasonChart;
import broodtide.report.Table;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** Plays plans for every colony, prints the answer, and writes pictures and results. */
final class Playing {
  private final Desk desk;
  private final RunOptions run;
  private final String what;

  Playing(Desk desk, RunOptions run, String what) {
    this.desk = desk;
    this.run = run;
    this.what = what;
  }

  int play(CaseReader.Cases cases, Function<ColonyCase, List<Plan>> plans) {
    SeasonPosterior.Effort effort = run.effort();
    Outputs outputs = Outputs.into(run.out);
    Map<String, byte[]> files = new LinkedHashMap<>();
    ResultsFile results =
        new ResultsFile(Version.number(), run.seed, effort.particles(), cases.notes());
    List<String> text = new ArrayList<>();
    try (Workers workers = run.threads == null ? Workers.all() : new Workers(run.threads)) {
      for (ColonyCase c : cases.cases()) {
        Comparison comparison = compare(c, plans.apply(c), effort, workers);
        Agreement agreement = Agreement.of(comparison.posterior(), workers);
        results.add(comparison, agreement.checks());
        text.addAll(say(comparison, agreement));
        pictures(comparison, files, cases.cases().size() > 1);
      }
    }
    files.put("results.json", results.text().getBytes(StandardCharsets.UTF_8));
    outputs.write(files);
    if (run.json) {
      desk.out().print(results.text());
    } else {
      text.forEach(desk.out()::println);
      cases.notes().forEach(note -> desk.out().println(desk.terminal().wrap(note)));
      if (!run.quiet) {
        desk.out()
            .println(
                desk.terminal()
                    .wrap(
                        "Written to " + run.out + ": " + String.join(", ", files.keySet()) + "."));
      }
    }
    desk.out().flush();
    return Main.OK;
  }

  private Comparison compare(
      ColonyCase c, List<Plan> plans, SeasonPosterior.Effort effort, Workers workers) {
    SeasonPosterior posterior;
    try (ProgressLine line = new ProgressLine(desk, run, "reading the washes of " + c.colony())) {
      posterior = c.posterior(effort, workers, line);
    }
    try (ProgressLine line = new ProgressLine(desk, run, "playing plans for " + c.colony())) {
      return Comparison.of(c, posterior, plans, workers, line);
    }
  }

  private void pictures(Comparison comparison, Map<String, byte[]> files, boolean several) {
    String name = several ? what + "-" + Outputs.name(comparison.colony().colony()) : what;
    SeasonChart chart = PlanPictures.plans(comparison, title(comparison));
    files.put(name + ".svg", chart.svg().getBytes(StandardCharsets.UTF_8));
    files.put(name + ".png", chart.png());
  }

  private static String title(Comparison comparison) {
    PlanRun wait = comparison.runs().get(0);
    LocalDate day = shown(comparison);
    String title =
        (wait.plan().controls().isEmpty() ? "If you wait" : "With " + wait.plan().name())
            + ", about "
            + middle(wait, day)
            + " mites per 100 bees on "
            + Plain.day(day);
    PlanRun best = wait;
    for (PlanRun r : comparison.runs()) {
      best =
          Spread.of(r.infestation(day)).median() < Spread.of(best.infestation(day)).median()
              ? r
              : best;
    }
    return best == wait ? title : title + "; " + middle(best, day) + " with " + best.plan().name();
  }

  private static String middle(PlanRun run, LocalDate day) {
    double median = Spread.of(run.infestation(day)).median();
    return median >= PlanRun.FULL ? "100 or more" : Digits.two(median);
  }

  /** The day that the table and the title speak of: when winter bees have been raised. */
  private static LocalDate shown(Comparison comparison) {
    ColonyCase c = comparison.colony();
    LocalDate day = c.stages().endOfWinterBees(c.now());
    return day.isAfter(c.until()) ? c.until() : day;
  }

  private List<String> say(Comparison comparison, Agreement agreement) {
    ColonyCase c = comparison.colony();
    List<String> out = new ArrayList<>();
    PlanRun first = comparison.runs().get(0);
    out.add(desk.terminal().strong("Colony " + c.colony()));
    out.add(
        desk.terminal().wrap("If you wait: " + Plain.outlook(first) + " " + Plain.crossing(first)));
    if (comparison.runs().size() > 1) {
      out.add("");
      out.add(desk.terminal().table(table(comparison)).stripTrailing());
      out.add(
          desk.terminal()
              .faint(
                  desk.terminal()
                      .wrap(
                          "Mites per 100 bees on "
                              + Plain.day(shown(comparison))
                              + "; worker brood with a mite while winter bees are raised; chance"
                              + " that it is less than with "
                              + first.plan().name()
                              + ".")));
    }
    for (PlanRun r : comparison.runs()) {
      for (String objection : r.objections()) {
        out.add(desk.terminal().wrap("Note: " + objection + "."));
      }
    }
    for (Comparison.Refused r : comparison.refused()) {
      out.add(desk.terminal().wrap("Left out: " + r.reason() + "."));
    }
    Learned.sentences(comparison.posterior()).forEach(s -> out.add(desk.terminal().wrap(s)));
    agreement.words().forEach(s -> out.add(desk.terminal().wrap(s)));
    out.add("");
    return out;
  }

  private static Table table(Comparison comparison) {
    LocalDate day = shown(comparison);
    Table table =
        Table.of(
            Table.Column.words("Plan"),
            Table.Column.numbers(Plain.shortDay(day)),
            Table.Column.numbers("9 in 10"),
            Table.Column.numbers("winter brood"),
            Table.Column.numbers("better"));
    double[] reference = comparison.runs().get(0).winterBroodInfested();
    for (PlanRun r : comparison.runs()) {
      Spread end = Spread.of(r.infestation(day));
      double[] infested = r.winterBroodInfested();
      boolean none = Double.isNaN(infested[0]);
      table =
          table.row(
              r.plan().name(),
              middle(r, day),
              Digits.range(end.q05(), end.q95()),
              none ? "-" : Digits.percent(Spread.of(infested).median()),
              none || r == comparison.runs().get(0)
                  ? "-"
                  : Digits.percent(Comparison.chanceSmaller(infested, reference)));
    }
    return table;
  }
}
