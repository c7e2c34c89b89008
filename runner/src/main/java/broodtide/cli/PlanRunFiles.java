package broodtide.cli;

import broodtide.assessment.ApiaryPlan;
import broodtide.assessment.ApiarySheet;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.Decision;
import broodtide.assessment.HiveRow;
import broodtide.chart.SeasonChart;
import broodtide.files.Outputs;
import broodtide.fit.SeasonPosterior;
import broodtide.report.ApiaryPicture;
import broodtide.report.Page;
import broodtide.report.PagePart;
import broodtide.report.PlanFiles;
import broodtide.report.PlanPictures;
import broodtide.report.PosteriorPicture;
import broodtide.report.RunFacts;
import broodtide.report.SensitivityPicture;
import broodtide.report.SheetFile;
import broodtide.report.WindowPicture;
import broodtide.results.ColonyResult;
import broodtide.results.ResultsFile;
import broodtide.wash.ThresholdSet;
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
  private static final String SHEET = "sheet.csv";
  private static final String APIARY = "apiary";
  private static final String WINDOWS = "windows";
  private static final String INSIDE = "inside";
  private static final String POSTERIOR = "posterior";
  private static final String SENSITIVITY = "sensitivity";

  private final RunFacts facts;
  private final List<String> notes;
  private final boolean several;
  private final ThresholdSet thresholds;
  private final PictureFiles pictures;
  private final ResultsFile results;
  private final List<PagePart> parts = new ArrayList<>();
  private final PlanFiles tables = new PlanFiles();
  private final List<HiveRow> rows = new ArrayList<>();
  private Optional<String> wanted = Optional.empty();
  private Optional<ApiarySheet> sheet = Optional.empty();
  private List<ApiaryPlan> together = List.of();

  PlanRunFiles(
      String what, RunOptions run, SeasonPosterior.SamplerSettings effort, CaseReader.Cases cases) {
    facts = run.facts(what);
    notes = cases.notes();
    several = cases.cases().size() > 1;
    thresholds = cases.cases().get(0).thresholds();
    results = new ResultsFile(what, Version.number(), run.seed, effort.particles(), notes);
    pictures = new PictureFiles(several, run.png);
  }

  /** Takes in the decision of a colony for which no plans are laid, before its findings. */
  void decided(ColonyCase c, Decision decision) {
    results.decided(c.colony(), decision);
  }

  /** Whether there are several hives. */
  boolean several() {
    return several;
  }

  /** The sheet of the apiary, once all its hives were taken in; empty for one hive alone. */
  Optional<ApiarySheet> sheet() {
    return sheet;
  }

  /** Names the plan that is looked at for the whole apiary. */
  void togetherWith(Optional<String> plan) {
    wanted = plan;
  }

  /** One plan for the whole apiary; empty for one hive alone. */
  List<ApiaryPlan> together() {
    return together;
  }

  /** Takes in a colony with what is decided of it. */
  void add(ColonyResult result, Decision decision) {
    results.add(result);
    rows.add(HiveRow.of(result.comparison(), decision));
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

  /** Takes in the sheet of the apiary, after its last colony. */
  void finish() {
    if (!several || rows.isEmpty()) {
      return;
    }
    ApiarySheet apiary = ApiarySheet.of(rows);
    together = apiary.together(wanted);
    results.add(apiary, together);
    pictures.addOf(APIARY, ApiaryPicture.of(apiary, thresholds));
    sheet = Optional.of(apiary);
  }

  /** Names of all files that there may be for some colonies. */
  List<String> names(List<String> colonies) {
    List<String> names =
        new ArrayList<>(List.of(AnswerFiles.REPORT, PLANS, SEASON, Outputs.RESULTS));
    if (several) {
      names.add(SHEET);
      names.addAll(PictureFiles.ofAll(APIARY));
    }
    names.addAll(pictures.names(facts.command(), colonies));
    for (String what : List.of(INSIDE, POSTERIOR, SENSITIVITY, WINDOWS)) {
      names.addAll(pictures.names(what, colonies));
    }
    return names;
  }

  /** All files by name. */
  Map<String, byte[]> files() {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put(AnswerFiles.REPORT, utf8(new Page(parts, notes, facts, sheet, together).html()));
    files.putAll(pictures.files());
    files.put(PLANS, utf8(tables.plans()));
    files.put(SEASON, utf8(tables.season()));
    sheet.ifPresent(apiary -> files.put(SHEET, utf8(SheetFile.of(apiary))));
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
