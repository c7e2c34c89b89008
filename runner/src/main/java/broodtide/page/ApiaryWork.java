package broodtide.page;

import broodtide.assessment.ApiaryPlan;
import broodtide.assessment.ApiarySheet;
import broodtide.assessment.Assessment;
import broodtide.assessment.Caution;
import broodtide.assessment.ClimateEvidence;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.ColonyCases;
import broodtide.assessment.Comparison;
import broodtide.assessment.ControlCautions;
import broodtide.assessment.Decision;
import broodtide.assessment.HiveRow;
import broodtide.assessment.UsualPlans;
import broodtide.chart.Size;
import broodtide.chart.WindowMap;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.decision.MemoryNeed;
import broodtide.decision.NextWash;
import broodtide.decision.WindowSearch;
import broodtide.decision.Windows;
import broodtide.engine.Workers;
import broodtide.fit.Agreement;
import broodtide.fit.SeasonBanks;
import broodtide.fit.SeasonPosterior;
import broodtide.report.PagePieces;
import broodtide.report.PlanRunFiles;
import broodtide.report.RunFacts;
import broodtide.report.SheetFile;
import broodtide.report.SheetPage;
import broodtide.report.WindowPicture;
import broodtide.results.ColonyResult;
import broodtide.results.ResultsFile;
import broodtide.words.Answer;
import broodtide.words.ApiaryWords;
import broodtide.words.ClimateWords;
import broodtide.words.FirstLines;
import broodtide.words.LearnedWords;
import broodtide.words.OutcomeWords;
import broodtide.words.Plain;
import broodtide.words.ThresholdWords;
import broodtide.words.WindowWords;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;

/** Asks the core about the apiary, and sets the answers. The work of one thread. */
final class ApiaryWork implements AutoCloseable {
  private static final long SEED = 1;

  /** Simulated colonies of a hive, as many as the commands take. */
  static final int USUAL = 4096;

  /** Hives whose season is drawn; of more there are the sheet and the sentences. */
  static final int MOST_DRAWN = ColonyCases.FEW;

  /** Hives whose reading is kept, so that plans for them are quick. */
  private static final int KEPT = 12;

  /** Hives of which it is kept where they stand. */
  private static final int STANDING = 1000;

  /** Hives whose washes are asked which climate they fit. */
  private static final int TELLING = 3;

  /** Share of the heap that what is held may fill. */
  private static final double SHARE = 0.8;

  private static final Size MAP_ON_PHONE = new Size(Size.PHONE.width(), 240);

  private final Workers workers = Workers.all();
  private final String version;
  private final int colonies;
  private final SeasonBanks banks;
  private final Map<HiveKey, Assessment> read = new Newest<>(KEPT);
  private final Map<HiveKey, Standing> standing = new Newest<>(STANDING);
  private final Map<List<HiveKey>, Optional<String>> fits = new Newest<>(1);

  /** Where a hive stands: its row of the sheet, and what is shown of it. */
  private record Standing(HiveRow row, ObjectNode shown) {}

  /** As many as were asked for last. */
  private static final class Newest<K, V> extends LinkedHashMap<K, V> {
    private static final long serialVersionUID = 1L;
    private final int most;

    Newest(int most) {
      super(16, 0.75f, true);
      this.most = most;
    }

    @Override
    protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
      return size() > most;
    }
  }

  /**
   * @param version version of the program
   * @param colonies simulated colonies of a hive
   */
  ApiaryWork(String version, int colonies) {
    this.version = version;
    this.colonies = colonies;
    this.banks = SeasonBanks.inHeap(colonies);
  }

  /** The sheet of the apiary, then every hive with its first lines and its season. */
  ObjectNode stand(HiveFolder.Apiary apiary, PageJobs.Step step) {
    List<ColonyCase> cases = apiary.cases();
    List<HiveRow> rows = new ArrayList<>();
    ObjectNode out = JsonNodeFactory.instance.objectNode();
    Map<String, ObjectNode> hives = new LinkedHashMap<>();
    Map<String, String> places = new LinkedHashMap<>();
    boolean drawn = cases.size() <= MOST_DRAWN;
    String place = HiveKey.place(apiary.study());
    int parts = 2 * cases.size();
    for (ColonyCase c : cases) {
      HiveKey key = HiveKey.of(place, c);
      Standing known = standing.get(key);
      if (known == null || (drawn && !known.shown().has("season"))) {
        known = standing(c, key, drawn, step, 2 * hives.size(), parts);
        standing.put(key, known);
      }
      rows.add(known.row());
      String id = "hive-" + (hives.size() + 1);
      places.put(c.colony(), id);
      ObjectNode shown = known.shown().deepCopy().put("id", id);
      if (!drawn) {
        shown.remove("season");
      }
      hives.put(c.colony(), shown);
    }
    ApiarySheet sheet = ApiarySheet.of(rows);
    List<ApiaryPlan> together = sheet.together(Optional.empty());
    out.put("sheet", PagePieces.sheet(sheet, together, cases.get(0).thresholds(), places));
    out.put("headline", ApiaryWords.headline(sheet, cases.get(0).thresholds()));
    ApiaryWords.begins(sheet).ifPresent(s -> out.put("begins", s));
    ArrayNode each = out.putArray("hives");
    sheet.rows().forEach(row -> each.add(hives.get(row.hive())));
    PagePieces.reading().forEach(out.putArray("reading")::add);
    ArrayNode notes = out.putArray("notes");
    if (!drawn) {
      notes.add(
          "Of more than "
              + MOST_DRAWN
              + " hives no pictures are drawn here; \"Plans\" draws each alone.");
    }
    apiary.washes().notes().forEach(notes::add);
    ColonyCase any = cases.get(0);
    ThresholdWords.notes(any.stages(), any.thresholds(), any.now()).forEach(notes::add);
    out.put("decisionDate", Plain.day(sheet.date()));
    out.put("caution", Caution.answer(ControlCautions.acid(sheet.named())));
    return out;
  }

  private Standing standing(
      ColonyCase c, HiveKey key, boolean drawn, PageJobs.Step step, int part, int parts) {
    List<Plan> plans = UsualPlans.of(c);
    room(c, 1, plans.size());
    Assessment assessment = assess(key, c, step, part, parts);
    Comparison comparison =
        assessment.compare(plans, step.begin("playing plans for " + c.colony(), part + 1, parts));
    HiveRow row = HiveRow.of(comparison, comparison.decision(), NextWash.of(comparison));
    return new Standing(row, hive(comparison, drawn));
  }

  /** Says so where the washes fit another climate far better; the hives with most washes tell. */
  ObjectNode climate(HiveFolder.Apiary apiary, PageJobs.Step step) {
    List<ColonyCase> telling =
        apiary.cases().stream()
            .sorted(Comparator.comparingInt((ColonyCase c) -> c.washes().size()).reversed())
            .limit(TELLING)
            .toList();
    String place = HiveKey.place(apiary.study());
    List<HiveKey> keys = telling.stream().map(c -> HiveKey.of(place, c)).toList();
    Optional<String> words = fits.get(keys);
    if (words == null) {
      step.begin("asking whether the washes fit the climate", 0, 1);
      String chosen = telling.get(0).model().climate().name();
      words =
          ClimateEvidence.farBetter(
                  ClimateEvidence.of(
                      telling, new SeasonPosterior.SamplerSettings(512, 2, SEED), workers),
                  chosen)
              .map(better -> ClimateWords.farBetter(better, chosen));
      fits.put(keys, words);
    }
    ObjectNode out = JsonNodeFactory.instance.objectNode();
    words.ifPresent(s -> out.put("words", s));
    return out;
  }

  private ObjectNode hive(Comparison comparison, boolean drawn) {
    ObjectNode out = JsonNodeFactory.instance.objectNode();
    out.put("name", comparison.colony().colony());
    FirstLines.of(comparison).forEach(out.putArray("lines")::add);
    if (drawn) {
      out.put("season", PagePieces.season(comparison));
    }
    Answer.contradiction(Agreement.of(comparison.posterior(), workers))
        .ifPresent(s -> out.put("warning", s));
    LearnedWords.sentences(comparison.posterior()).forEach(out.putArray("learned")::add);
    return out;
  }

  /** Plans of the page side by side for one hive. */
  ObjectNode plans(HiveFolder.Apiary apiary, String hive, List<Plan> own, PageJobs.Step step) {
    ColonyCase c = named(apiary, hive);
    List<Plan> plans = new ArrayList<>(List.of(Plan.waiting(UsualPlans.WAIT)));
    plans.addAll(own);
    room(c, 1, plans.size());
    Assessment assessment = assess(apiary, c, step, 0, 3);
    Comparison comparison =
        assessment.compare(plans, step.begin("playing plans for " + hive, 1, 3));
    step.begin("drawing the season of " + hive, 2, 3);
    ObjectNode out = JsonNodeFactory.instance.objectNode();
    out.put("hive", hive);
    out.put("table", PagePieces.plans(comparison));
    out.put("season", PagePieces.season(comparison));
    FirstLines.of(comparison).forEach(out.putArray("lines")::add);
    Set<String> cautions = new LinkedHashSet<>();
    for (Plan plan : own) {
      for (Control control : plan.controls()) {
        ControlCautions.of(control).forEach(s -> cautions.add(control.name() + ": " + s));
      }
    }
    cautions.forEach(out.putArray("cautions")::add);
    out.put("caution", Caution.answer(ControlCautions.acid(own)));
    return out;
  }

  /** The map of windows of one hive, with what each of its cells stands for. */
  ObjectNode windows(HiveFolder.Apiary apiary, String hive, PageJobs.Step step) {
    ColonyCase c = named(apiary, hive);
    Assessment assessment = assess(apiary, c, step, 0, 2);
    Windows windows =
        WindowSearch.usual(
            c, assessment.posterior(), workers, step.begin("trying start days for " + hive, 1, 2));
    WindowMap map = WindowPicture.of(windows);
    ObjectNode out = JsonNodeFactory.instance.objectNode();
    out.put("hive", hive);
    out.put("first", WindowWords.first(windows));
    out.put("map", PagePieces.figure(map, MAP_ON_PHONE, ""));
    WindowMap narrow = map.sized(MAP_ON_PHONE);
    ArrayNode rows = out.putArray("rows");
    for (int r = 0; r < windows.rows().size(); r++) {
      Windows.Row row = windows.rows().get(r);
      ObjectNode one = rows.addObject();
      one.put("use", row.control().name());
      one.put("title", row.control().title());
      ArrayNode cells = one.putArray("cells");
      for (int i = 0; i < windows.starts().size(); i++) {
        ObjectNode cell = cells.addObject();
        LocalDate start = windows.starts().get(i);
        cell.put("start", start.toString());
        cell.put("day", Plain.day(start));
        if (row.cells().get(i) instanceof Windows.Blocked blocked) {
          cell.put("why", Plain.capital(blocked.obstacle().kind().reason()));
          cell.put("words", blocked.obstacle().words());
        } else {
          cell.put("label", windows.labelDecides(row, i));
          cell.put("figure", OutcomeWords.named(windows.outcome(), row.middle(i).orElseThrow()));
        }
        map.place(r, i).forEach(cell.putArray("wide")::add);
        narrow.place(r, i).forEach(cell.putArray("narrow")::add);
      }
    }
    return out;
  }

  /** Whether the hives are too many for a report with a section for each. */
  static boolean many(HiveFolder.Apiary apiary) {
    return apiary.cases().size() > MOST_DRAWN;
  }

  /**
   * What {@code compare} writes for many hives, the sheet and a line of results for each, and the
   * sheet as a page to print.
   *
   * @param lines takes the line of each hive as it is found, by its name
   */
  SheetReport sheetReport(
      HiveFolder.Apiary apiary, BiConsumer<String, byte[]> lines, PageJobs.Step step) {
    List<ColonyCase> cases = apiary.cases();
    List<Plan> own = UsualPlans.with(List.of(), own(apiary));
    List<HiveRow> rows = new ArrayList<>();
    int part = 0;
    int parts = 3 * cases.size();
    for (ColonyCase c : cases) {
      List<Plan> plans = UsualPlans.with(UsualPlans.of(c), own);
      room(c, 1, plans.size());
      ColonyResult result = result(apiary, c, plans, step, part, parts);
      part += 3;
      Decision decision = result.comparison().decision();
      rows.add(HiveRow.of(result.comparison(), decision, NextWash.of(result.comparison())));
      lines.accept(c.colony(), ResultsFile.line(result, decision).getBytes(StandardCharsets.UTF_8));
    }
    ApiarySheet sheet = ApiarySheet.of(rows);
    String page =
        new SheetPage(
                sheet,
                sheet.together(own.stream().map(Plan::name).findFirst()),
                cases.get(0).thresholds(),
                apiary.washes().notes(),
                facts())
            .html();
    return new SheetReport(
        page.getBytes(StandardCharsets.UTF_8),
        SheetFile.of(sheet).getBytes(StandardCharsets.UTF_8));
  }

  /**
   * The report of many hives.
   *
   * @param page the sheet to print, as HTML
   * @param table the sheet as CSV
   */
  @SuppressWarnings("ArrayRecordComponent") // read only, never compared
  record SheetReport(byte[] page, byte[] table) {}

  private RunFacts facts() {
    return new RunFacts("compare", version, SEED, colonies, "broodtide open");
  }

  private ColonyResult result(
      HiveFolder.Apiary apiary,
      ColonyCase c,
      List<Plan> plans,
      PageJobs.Step step,
      int part,
      int parts) {
    Assessment assessment = assess(apiary, c, step, part, parts);
    Comparison comparison =
        assessment.compare(plans, step.begin("playing plans for " + c.colony(), part + 1, parts));
    Windows windows =
        WindowSearch.usual(
            c,
            assessment.posterior(),
            workers,
            step.begin("trying start days for " + c.colony(), part + 2, parts));
    return ColonyResult.of(comparison, Optional.of(windows), workers);
  }

  /** Everything that {@code compare} writes for these files, of which hives are few. */
  Map<String, byte[]> report(HiveFolder.Apiary apiary, PageJobs.Step step) {
    List<ColonyCase> cases = apiary.cases();
    List<Plan> own = UsualPlans.with(List.of(), own(apiary));
    PlanRunFiles files =
        new PlanRunFiles(
            facts(), apiary.washes().notes(), cases.size() > 1, cases.get(0).thresholds(), false);
    files.togetherWith(own.stream().map(Plan::name).findFirst());
    int part = 0;
    int parts = 3 * cases.size();
    for (ColonyCase c : cases) {
      List<Plan> plans = UsualPlans.with(UsualPlans.of(c), own);
      room(c, cases.size(), plans.size());
      ColonyResult result = result(apiary, c, plans, step, part, parts);
      part += 3;
      files.add(result, result.comparison().decision());
    }
    files.finish();
    return files.files();
  }

  static List<Plan> own(HiveFolder.Apiary apiary) {
    return apiary.study().plans().stream().filter(p -> !p.controls().isEmpty()).toList();
  }

  static ColonyCase named(HiveFolder.Apiary apiary, String hive) {
    return apiary.cases().stream()
        .filter(c -> c.colony().equals(hive))
        .findFirst()
        .orElseThrow(() -> new Missing("there is no count of this hive; choose another"));
  }

  private Assessment assess(
      HiveFolder.Apiary apiary, ColonyCase c, PageJobs.Step step, int part, int parts) {
    return assess(HiveKey.of(HiveKey.place(apiary.study()), c), c, step, part, parts);
  }

  private Assessment assess(HiveKey key, ColonyCase c, PageJobs.Step step, int part, int parts) {
    Assessment known = read.get(key);
    if (known == null) {
      known =
          Assessment.of(
              c,
              new SeasonPosterior.SamplerSettings(colonies, 3, SEED),
              banks,
              workers,
              step.begin("reading the washes of " + c.colony(), part, parts));
      read.put(key, known);
    }
    return known;
  }

  private void room(ColonyCase c, int hives, int plans) {
    long wanted = (long) (MemoryNeed.ofPlans(c, hives, plans).bytes(colonies) / SHARE);
    long most = Runtime.getRuntime().maxMemory();
    if (wanted > most) {
      throw new Missing(
          "this needs about "
              + (wanted >> 20)
              + " MB of memory, and Java may take "
              + (most >> 20)
              + " MB; compare fewer plans, or give Java more memory with"
              + " JAVA_TOOL_OPTIONS=-Xmx4g");
    }
  }

  @Override
  public void close() {
    workers.close();
  }
}
