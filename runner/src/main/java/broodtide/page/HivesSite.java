package broodtide.page;

import broodtide.assessment.ColonyCase;
import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.Surroundings;
import broodtide.classroom.ClassSite;
import broodtide.control.Plan;
import broodtide.files.FolderChanged;
import broodtide.files.Journal;
import broodtide.files.Outputs;
import broodtide.season.Climate;
import broodtide.wash.Frame;
import broodtide.wash.WashMethod;
import broodtide.web.Refused;
import broodtide.web.Response;
import broodtide.web.Site;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.URI;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Collection;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The first page with its three doors, the page for one's own hives, and behind them the class
 * page. All that concerns the user's files is sent, and answered only to who knows the token.
 */
public final class HivesSite implements Site, AutoCloseable {
  private static final String API = "/api/hives/";
  private static final String REPORT = "/report/";
  private static final String PAGE = "report.html";
  private static final String SHEET = "sheet.csv";
  private static final String LINES = "results.jsonl";
  private static final String OUT = "broodtide-out";

  private final ClassSite lessons;
  private final HiveFolder folder;
  private final Clock clock;
  private final PageJobs jobs;
  private final ApiaryWork work;

  /** The last report, under an address that nobody can guess. */
  private record Report(String name, byte[] page) {}

  private volatile Optional<Report> report = Optional.empty();

  /**
   * @param lessons the class page
   * @param folder the user's folder, which need not be there yet
   * @param version version of the program
   * @param clock says what day it is
   * @param trouble is told of faults of the program
   */
  public HivesSite(
      ClassSite lessons, Path folder, String version, Clock clock, Consumer<Throwable> trouble) {
    this(lessons, folder, new ApiaryWork(version, ApiaryWork.USUAL), clock, trouble);
  }

  /** The same, with work that is set by whoever opens it. */
  HivesSite(
      ClassSite lessons, Path folder, ApiaryWork work, Clock clock, Consumer<Throwable> trouble) {
    this.lessons = lessons;
    this.folder = new HiveFolder(folder, clock);
    this.clock = clock;
    this.jobs = new PageJobs(trouble);
    this.work = work;
  }

  /** {@return a token that nobody can guess} */
  public static String token() {
    byte[] bytes = new byte[16];
    new SecureRandom().nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  @Override
  public Response answer(URI address) {
    String path = address.getPath();
    Optional<Report> last = report;
    if (path.startsWith(REPORT)) {
      return last.filter(r -> path.equals(REPORT + r.name()))
          .map(r -> Response.wholePage(r.page()))
          .orElseThrow(
              () -> Refused.unknown("this report is not there any more; make it once more"));
    }
    return switch (path) {
      case "/" ->
          address.getRawQuery() == null
              ? Response.html(200, HivesPages.doors())
              : lessons.answer(address);
      case "/hives" -> Response.html(200, HivesPages.hives());
      default -> lessons.answer(address);
    };
  }

  @Override
  public Response post(URI address, JsonNode body) {
    String path = address.getPath();
    if (!path.startsWith(API)) {
      throw Refused.unknown("nothing can be sent to this address");
    }
    try {
      return Response.json(200, asked(path.substring(API.length()), body));
    } catch (FolderChanged e) {
      return Response.json(409, object().put("error", e.reason()).put("changed", true));
    }
  }

  private ObjectNode asked(String what, JsonNode body) {
    String page = word(body, "page");
    return switch (what) {
      case "load" -> loaded();
      case "version" -> object().put("version", folder.version());
      case "check" -> checked(body);
      case "paste" -> HiveFolder.pasted(body.path("text").asText()).json();
      case "place" -> PlaceQuestions.answered(body);
      case "save" -> saved(body);
      case "work" -> begin(page, body);
      case "job" -> jobs.look(page);
      case "cancel" -> {
        jobs.cancel(page);
        yield jobs.look(page);
      }
      case "calendar" -> calendar(body);
      default -> throw Refused.unknown("nothing can be sent to this address");
    };
  }

  private ObjectNode saved(JsonNode body) {
    HiveFolder.Saved saved = folder.save(body);
    ObjectNode out = object().put("version", saved.version());
    saved.lost().forEach(out.putArray("lost")::add);
    return out;
  }

  private static String word(JsonNode body, String field) {
    String word = body.path(field).asText();
    if (word.length() > 200) {
      throw Refused.bad(field + " is too long");
    }
    return word;
  }

  private ObjectNode loaded() {
    ObjectNode out = folder.load();
    ArrayNode climates = out.putArray("climates");
    for (String name : Catalog.CLIMATES.names()) {
      Climate climate = Catalog.climate(name);
      ObjectNode one = climates.addObject().put("name", name).put("title", climate.title());
      StudyPage.span(one.putArray("supers"), climate.supers(), false);
      StudyPage.span(one.putArray("winterBees"), climate.winterBees(), false);
      StudyPage.span(one.putArray("southSupers"), climate.supers(), true);
      StudyPage.span(one.putArray("southWinterBees"), climate.winterBees(), true);
    }
    PlaceQuestions.write(out.putArray("questions"));
    ArrayNode controls = out.putArray("controls");
    for (String name : Catalog.CONTROLS.names()) {
      ControlTemplate control = Catalog.control(name);
      controls
          .addObject()
          .put("name", name)
          .put("title", control.title())
          .put("substance", control.substance().orElse(""));
    }
    ArrayNode thresholds = out.putArray("thresholds");
    Catalog.THRESHOLDS.names().forEach(thresholds::add);
    ArrayNode neighbours = out.putArray("neighbours");
    List.of(Surroundings.values()).forEach(s -> neighbours.add(s.word()));
    ArrayNode methods = out.putArray("methods");
    List.of(WashMethod.values()).forEach(m -> methods.add(m.id()));
    ArrayNode frames = out.putArray("frames");
    List.of(Frame.values()).forEach(f -> frames.add(f.id()));
    return out;
  }

  private ObjectNode checked(JsonNode body) {
    ObjectNode out = object();
    TableCheck check = folder.check();
    if (body.path("washes").isObject()) {
      out.set("washes", check.ofWashes(PageTable.of(body.get("washes"))));
    }
    if (body.path("treatments").isObject()) {
      out.set("treatments", check.ofTreatments(PageTable.of(body.get("treatments"))));
    }
    return out;
  }

  private ObjectNode begin(String page, JsonNode body) {
    String hive = word(body, "hive");
    JsonNode plans = body.path("plans");
    return switch (word(body, "what")) {
      case "stand" -> jobs.begin(page, step -> work.stand(folder.apiary(), step));
      case "climate" -> jobs.begin(page, step -> work.climate(folder.apiary(), step));
      case "plans" ->
          jobs.begin(
              page,
              step -> {
                HiveFolder.Apiary apiary = folder.apiary();
                List<Plan> own = new StudyPage(Optional.of(apiary.study())).plans(plans);
                return work.plans(apiary, hive, own, step);
              });
      case "windows" -> jobs.begin(page, step -> work.windows(folder.apiary(), hive, step));
      case "report" -> jobs.begin(page, this::reported);
      default -> throw Refused.bad("what is none of stand, climate, plans, windows, report");
    };
  }

  /** Writes what {@code compare} writes, beside the user's files. */
  private ObjectNode reported(PageJobs.Step step) {
    HiveFolder.Apiary apiary = folder.apiary();
    Path out = folder.path().resolve(OUT).resolve("compare");
    return ApiaryWork.many(apiary)
        ? reportedSheet(apiary, out, step)
        : reportedEach(apiary, out, step);
  }

  private ObjectNode reportedEach(HiveFolder.Apiary apiary, Path out, PageJobs.Step step) {
    Outputs outputs = Outputs.into(out, "compare", List.of(), List.of(PAGE));
    Map<String, byte[]> files = work.report(apiary, step);
    outputs.write(files);
    return made(Objects.requireNonNull(files.get(PAGE)), out, files.keySet());
  }

  /** Of many hives the sheet; lines of results lie on the disk until all are found. */
  private ObjectNode reportedSheet(HiveFolder.Apiary apiary, Path out, PageJobs.Step step) {
    Outputs outputs = Outputs.into(out, "compare", List.of(), List.of(PAGE, SHEET, LINES));
    try (Journal journal = Journal.open(out, new byte[] {1}, false)) {
      try {
        ApiaryWork.SheetReport found = work.sheetReport(apiary, journal::add, step);
        Map<String, Outputs.Content> files = new LinkedHashMap<>();
        files.put(PAGE, to -> to.write(found.page()));
        files.put(SHEET, to -> to.write(found.table()));
        files.put(
            LINES,
            to -> {
              for (ColonyCase c : apiary.cases()) {
                to.write(journal.read(c.colony(), 0, journal.length(c.colony())));
              }
            });
        outputs.writeAll(files);
        ObjectNode answer = made(found.page(), out, files.keySet());
        return answer.put(
            "note",
            "Of more than "
                + ApiaryWork.MOST_DRAWN
                + " hives the report holds the sheet, without a section for each. The same table"
                + " for a spreadsheet is in sheet.csv. Every figure is in results.jsonl, a line for"
                + " each hive. Plans draws one hive alone.");
      } finally {
        journal.remove();
      }
    }
  }

  private ObjectNode made(byte[] page, Path out, Collection<String> files) {
    Report made = new Report(token(), page);
    report = Optional.of(made);
    ObjectNode answer = object();
    answer.put("address", REPORT + made.name());
    answer.put("folder", out.toAbsolutePath().normalize().toString());
    files.forEach(answer.putArray("files")::add);
    return answer;
  }

  private ObjectNode calendar(JsonNode body) {
    HiveFolder.Apiary apiary = folder.apiary();
    String wanted = word(body, "plan");
    Optional<Plan> plan =
        ApiaryWork.own(apiary).stream().filter(p -> p.name().equals(wanted)).findFirst();
    if (!wanted.isEmpty() && plan.isEmpty()) {
      throw Refused.bad("there is no saved plan " + Refused.quoted(wanted));
    }
    ObjectNode out = object();
    out.put("name", "broodtide.ics");
    out.put("text", Reminders.of(apiary.cases(), plan, clock.instant()));
    out.put("words", Reminders.sentence(apiary.cases()));
    ArrayNode plans = out.putArray("plans");
    ApiaryWork.own(apiary).forEach(p -> plans.add(p.name()));
    return out;
  }

  private static ObjectNode object() {
    return JsonNodeFactory.instance.objectNode();
  }

  @Override
  public Response refusal(URI address, int status, String message) {
    return lessons.refusal(address, status, message);
  }

  @Override
  public void warm() {
    lessons.warm();
  }

  /** Stops all work. */
  @Override
  public void close() {
    jobs.close();
    work.close();
  }
}
