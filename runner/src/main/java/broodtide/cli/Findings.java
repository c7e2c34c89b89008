package broodtide.cli;

import broodtide.compare.ColonyResult;
import broodtide.compare.ResultsFile;
import broodtide.fit.SeasonPosterior;
import broodtide.report.Outputs;
import broodtide.report.Page;
import broodtide.report.PagePart;
import broodtide.report.Picture;
import broodtide.report.PlanFiles;
import broodtide.report.RunFacts;
import broodtide.report.SeasonChart;
import broodtide.report.WindowPicture;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What a run writes: report, pictures, tables and results, gathered colony by colony. */
final class Findings {
  /** The page to open first. */
  static final String REPORT = "report.html";

  private final RunFacts facts;
  private final List<String> notes;
  private final boolean several;
  private final ResultsFile results;
  private final List<PagePart> parts = new ArrayList<>();
  private final Map<String, byte[]> pictures = new LinkedHashMap<>();
  private final PlanFiles tables = new PlanFiles();

  Findings(String what, RunOptions run, SeasonPosterior.Effort effort, CaseReader.Cases cases) {
    String version = Version.number();
    facts =
        new RunFacts(what, version, run.seed, effort.particles(), CommandWords.of(run.command()));
    notes = cases.notes();
    several = cases.cases().size() > 1;
    results = new ResultsFile(what, version, run.seed, effort.particles(), notes);
  }

  /** Takes in a colony. */
  void add(ColonyResult result) {
    results.add(result);
    tables.add(result);
    SeasonChart chart = PlanPictures.plans(result);
    String colony = Outputs.name(result.comparison().colony().colony());
    String name = several ? facts.command() + "-" + colony : facts.command();
    if (pictures.containsKey(name + ".svg")) {
      name += "-" + (parts.size() + 1);
    }
    put(name, chart);
    String windows = name.replaceFirst("^" + facts.command(), "windows");
    result.windows().map(WindowPicture::of).ifPresent(map -> put(windows, map));
    parts.add(PagePart.of(result, chart, parts.size() + 1, several));
  }

  private void put(String name, Picture picture) {
    pictures.put(name + ".svg", utf8(picture.svg()));
    pictures.put(name + ".png", picture.png());
  }

  /** All files by name. */
  Map<String, byte[]> files() {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put(REPORT, utf8(new Page(parts, notes, facts).html()));
    files.putAll(pictures);
    files.put("plans.csv", utf8(tables.plans()));
    files.put("season.csv", utf8(tables.season()));
    files.put(Belongings.RESULTS, utf8(json()));
    return files;
  }

  /** The results as JSON. */
  String json() {
    return results.text();
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
