package broodtide.report;

import broodtide.assessment.ApiaryPlan;
import broodtide.assessment.ApiarySheet;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.Decision;
import broodtide.assessment.HiveRow;
import broodtide.chart.SeasonChart;
import broodtide.decision.NextWash;
import broodtide.files.Outputs;
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
public final class PlanRunFiles {
  private static final String REPORT = "report.html";
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

  /**
   * @param facts how the run is made
   * @param notes what was assumed, in sentences
   * @param several whether there are several hives
   * @param thresholds the set that they are held to
   * @param png whether every picture is wanted as PNG too
   */
  public PlanRunFiles(
      RunFacts facts, List<String> notes, boolean several, ThresholdSet thresholds, boolean png) {
    this.facts = facts;
    this.notes = List.copyOf(notes);
    this.several = several;
    this.thresholds = thresholds;
    results =
        new ResultsFile(facts.command(), facts.version(), facts.seed(), facts.members(), notes);
    pictures = new PictureFiles(several, png);
  }

  /** Takes in the decision of a colony for which no plans are laid, before its findings. */
  public void decided(ColonyCase c, Decision decision) {
    results.decided(c.colony(), decision);
  }

  /** Whether there are several hives. */
  public boolean several() {
    return several;
  }

  /** The sheet of the apiary, once all its hives were taken in; empty for one hive alone. */
  public Optional<ApiarySheet> sheet() {
    return sheet;
  }

  /** Names the plan that is looked at for the whole apiary. */
  public void togetherWith(Optional<String> plan) {
    wanted = plan;
  }

  /** One plan for the whole apiary; empty for one hive alone. */
  public List<ApiaryPlan> together() {
    return together;
  }

  /** Takes in a colony with what is decided of it. */
  public void add(ColonyResult result, Decision decision) {
    results.add(result);
    rows.add(HiveRow.of(result.comparison(), decision, NextWash.of(result.comparison())));
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
  public void finish() {
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
  public List<String> names(List<String> colonies) {
    List<String> names = new ArrayList<>(List.of(REPORT, PLANS, SEASON, Outputs.RESULTS));
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
  public Map<String, byte[]> files() {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put(REPORT, utf8(new Page(parts, notes, facts, sheet, together).html()));
    files.putAll(pictures.files());
    files.put(PLANS, utf8(tables.plans()));
    files.put(SEASON, utf8(tables.season()));
    sheet.ifPresent(apiary -> files.put(SHEET, utf8(SheetFile.of(apiary))));
    files.put(Outputs.RESULTS, utf8(json()));
    return files;
  }

  /** Why there are no PNG files, and how to mend it. */
  public Optional<String> lacking() {
    return pictures.lacking();
  }

  /** What is to be minded about the plans of all colonies taken in. */
  public String caution() {
    return results.caution();
  }

  /** The results as JSON. */
  public String json() {
    return results.text();
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
