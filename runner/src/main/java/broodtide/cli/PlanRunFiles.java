package broodtide.cli;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Decision;
import broodtide.chart.SeasonChart;
import broodtide.files.Outputs;
import broodtide.fit.SeasonPosterior;
import broodtide.report.Page;
import broodtide.report.PagePart;
import broodtide.report.PlanFiles;
import broodtide.report.PlanPictures;
import broodtide.report.PosteriorPicture;
import broodtide.report.RunFacts;
import broodtide.report.SensitivityPicture;
import broodtide.report.WindowPicture;
import broodtide.results.ColonyResult;
import broodtide.results.ResultsFile;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a run writes: report, pictures, tables and results, gathered colony by colony. */
final class PlanRunFiles {
  private static final String PLANS = "plans.csv";
  private static final String SEASON = "season.csv";
  private static final String WINDOWS = "windows";
  private static final String INSIDE = "inside";
  private static final String POSTERIOR = "posterior";
  private static final String SENSITIVITY = "sensitivity";

  private final RunFacts facts;
  private final List<String> notes;
  private final boolean several;
  private final PictureFiles pictures;
  private final ResultsFile results;
  private final List<PagePart> parts = new ArrayList<>();
  private final PlanFiles tables = new PlanFiles();

  PlanRunFiles(
      String what, RunOptions run, SeasonPosterior.SamplerSettings effort, CaseReader.Cases cases) {
    facts = run.facts(what);
    notes = cases.notes();
    several = cases.cases().size() > 1;
    results = new ResultsFile(what, Version.number(), run.seed, effort.particles(), notes);
    pictures = new PictureFiles(several, run.png);
  }

  /** Takes in the decision of a colony for which no plans are laid, before its findings. */
  void decided(ColonyCase c, Decision decision) {
    results.decided(c.colony(), decision);
  }

  /** Takes in a colony. */
  void add(ColonyResult result) {
    results.add(result);
    tables.add(result);
    SeasonChart chart = PlanPictures.plans(result);
    String colony = result.comparison().colony().colony();
    pictures.add(facts.command(), colony, chart);
    pictures.add(INSIDE, colony, PlanPictures.inside(result));
    PosteriorPicture.of(result.comparison())
        .ifPresent(picture -> pictures.add(POSTERIOR, colony, picture));
    SensitivityPicture.of(result).ifPresent(picture -> pictures.add(SENSITIVITY, colony, picture));
    result.windows().ifPresent(map -> pictures.add(WINDOWS, colony, WindowPicture.of(map)));
    parts.add(PagePart.of(result, chart, parts.size() + 1, several));
  }

  /** Names of all files that there may be for some colonies. */
  List<String> names(List<String> colonies) {
    List<String> names =
        new ArrayList<>(List.of(AnswerFiles.REPORT, PLANS, SEASON, Outputs.RESULTS));
    names.addAll(pictures.names(facts.command(), colonies));
    for (String what : List.of(INSIDE, POSTERIOR, SENSITIVITY, WINDOWS)) {
      names.addAll(pictures.names(what, colonies));
    }
    return names;
  }

  /** All files by name. */
  Map<String, byte[]> files() {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put(AnswerFiles.REPORT, utf8(new Page(parts, notes, facts).html()));
    files.putAll(pictures.files());
    files.put(PLANS, utf8(tables.plans()));
    files.put(SEASON, utf8(tables.season()));
    files.put(Outputs.RESULTS, utf8(json()));
    return files;
  }

  /** Why there are no PNG files, and how to mend it. */
  Optional<String> lacking() {
    return pictures.lacking();
  }

  /** The results as JSON. */
  String json() {
    return results.text();
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
