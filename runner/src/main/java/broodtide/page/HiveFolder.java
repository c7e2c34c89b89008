package broodtide.page;

import broodtide.assessment.ApiaryCases;
import broodtide.assessment.ColonyCase;
import broodtide.files.KeptFolder;
import broodtide.forms.BadInput;
import broodtide.forms.RevisedJson;
import broodtide.forms.Source;
import broodtide.study.Study;
import broodtide.study.StudyFile;
import broodtide.study.TreatmentFile;
import broodtide.study.WashFile;
import broodtide.table.SheetText;
import broodtide.web.Refused;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The user's files: the same that commands read, in one folder. */
final class HiveFolder {
  static final String WASHES = "washes.csv";
  static final String TREATMENTS = "treatments.csv";
  static final String STUDY = "study.json";

  static final List<String> WASH_COLUMNS =
      List.of("date", "colony", "mites", "bees", "yard", "method", "frame", "note");
  static final List<String> TREATMENT_COLUMNS = List.of("date", "colony", "control", "note");
  private static final Set<String> KNOWN_WASH_COLUMNS =
      Set.of(
          "date", "colony", "mites", "bees", "method", "frame", "note", "frames_of_bees", "yard");
  private static final Set<String> KNOWN_TREATMENT_COLUMNS =
      Set.of("date", "colony", "control", "applications", "every", "days_without_laying", "note");

  /** Columns that a file of washes always has; the others only where they hold something. */
  private static final List<String> NEEDED = List.of("date", "colony", "mites", "bees", "control");

  private static final ObjectMapper JSON = new ObjectMapper();

  private final KeptFolder folder;
  private final Clock clock;

  HiveFolder(Path folder, Clock clock) {
    this.folder = KeptFolder.of(folder, List.of(WASHES, TREATMENTS, STUDY));
    this.clock = clock;
  }

  /**
   * What the files say together.
   *
   * @param version stands for the files as they were read
   * @param study where the hives stand
   * @param washes the washes
   * @param cases a case for each hive
   */
  record Apiary(String version, Study study, WashFile washes, List<ColonyCase> cases) {}

  Path path() {
    return folder.folder();
  }

  LocalDate today() {
    return LocalDate.now(clock);
  }

  TableCheck check() {
    return new TableCheck(today());
  }

  /** {@return what stands for the files as they are now} */
  String version() {
    return folder.read().version();
  }

  /** {@return everything that the page shows of the files; what cannot be read says so} */
  ObjectNode load() {
    KeptFolder.Contents held = folder.read();
    ObjectNode out = JsonNodeFactory.instance.objectNode();
    out.put("folder", path().toAbsolutePath().normalize().toString());
    out.put("version", held.version());
    out.put("today", today().toString());
    out.put("empty", held.files().isEmpty());
    table(out, "washes", held.find(WASHES), WASHES, KNOWN_WASH_COLUMNS, WASH_COLUMNS);
    table(
        out,
        "treatments",
        held.find(TREATMENTS),
        TREATMENTS,
        KNOWN_TREATMENT_COLUMNS,
        TREATMENT_COLUMNS);
    ObjectNode study = out.putObject("study");
    try {
      Optional<Study> there = study(held);
      new StudyPage(there).write(study);
    } catch (BadInput e) {
      study.put("fault", e.reason());
    }
    return out;
  }

  private static void table(
      ObjectNode out,
      String field,
      Optional<byte[]> file,
      String name,
      Set<String> known,
      List<String> usual) {
    try {
      PageTable table =
          file.isEmpty()
              ? new PageTable(usual, List.of())
              : PageTable.of(text(file.get(), name), name, known, usual);
      out.set(field, table.json());
    } catch (BadInput | Refused e) {
      out.set(field, new PageTable(usual, List.of()).json().put("fault", e.reason()));
    }
  }

  private static String text(byte[] file, String name) {
    try {
      return SheetText.read(new ByteArrayInputStream(file), name).text();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Reads a table of washes that was pasted or dropped. */
  static PageTable pasted(String text) {
    return PageTable.of(text, "what was pasted", KNOWN_WASH_COLUMNS, WASH_COLUMNS);
  }

  private Optional<Study> study(KeptFolder.Contents held) {
    return held.find(STUDY).isEmpty()
        ? Optional.empty()
        : Optional.of(StudyFile.read(Source.of(path().resolve(STUDY))));
  }

  /**
   * What came of a save.
   *
   * @param version the version that the folder holds now
   * @param lost remarks of the study that would be lost; nothing is written then
   */
  record Saved(String version, List<String> lost) {}

  /**
   * Saves what the page holds. Remarks, columns and the layout of the files stay; where remarks
   * cannot, nothing is saved unless that was agreed to.
   *
   * @param body tables, place and plans, each only where it is to be saved
   * @return what came of it
   * @throws BadInput with the faults of a table
   * @throws broodtide.files.FolderChanged when somebody else changed the files
   */
  Saved save(JsonNode body) {
    KeptFolder.Contents held = folder.read();
    String version = body.path("version").asText();
    Map<String, Optional<byte[]>> changes = new LinkedHashMap<>();
    TableCheck check = check();
    Optional<WashFile> washes = Optional.empty();
    if (body.path("washes").isObject()) {
      TableLayout layout = layout(held, WASHES, KNOWN_WASH_COLUMNS);
      PageTable table = trimmed(PageTable.of(body.get("washes")), layout);
      washes = check.washes(table);
      changes.put(WASHES, Optional.of(layout.file(table)));
    } else if (held.find(WASHES).isPresent()) {
      washes = check.washes(tableOf(held, WASHES));
    } else {
      PageTable none = trimmed(new PageTable(WASH_COLUMNS, List.of()), TableLayout.USUAL);
      changes.put(WASHES, Optional.of(TableLayout.USUAL.file(none)));
    }
    Optional<TreatmentFile> treatments = Optional.empty();
    if (body.path("treatments").isObject()) {
      TableLayout layout = layout(held, TREATMENTS, KNOWN_TREATMENT_COLUMNS);
      PageTable table = trimmed(PageTable.of(body.get("treatments")), layout);
      treatments = check.treatments(table);
      boolean none = table.rows().isEmpty() && layout.equals(TableLayout.USUAL);
      changes.put(TREATMENTS, none ? Optional.empty() : Optional.of(layout.file(table)));
    } else if (held.find(TREATMENTS).isPresent()) {
      treatments = check.treatments(tableOf(held, TREATMENTS));
    }
    if (body.path("place").isObject()) {
      Optional<Study> old = version.equals(held.version()) ? study(held) : Optional.empty();
      Study next = new StudyPage(old).made(body, washes, treatments, path(), today());
      if (old.isEmpty() || !StudyFile.write(old.get()).equals(StudyFile.write(next))) {
        RevisedJson revised = revised(old, next, held);
        if (!revised.lost().isEmpty() && !body.path("withoutRemarks").asBoolean()) {
          return new Saved(held.version(), revised.lost());
        }
        changes.put(STUDY, Optional.of(revised.text().getBytes(StandardCharsets.UTF_8)));
      }
    }
    return new Saved(folder.save(version, changes).version(), List.of());
  }

  /** The study with what the page changed; all else stays as the user wrote it, if it can. */
  private RevisedJson revised(Optional<Study> old, Study next, KeptFolder.Contents held) {
    String wanted = StudyFile.write(next);
    if (old.isEmpty()) {
      return new RevisedJson(wanted, List.of());
    }
    String text = new String(held.find(STUDY).orElseThrow(), StandardCharsets.UTF_8);
    String bare = text.startsWith("\uFEFF") ? text.substring(1) : text;
    JsonNode was = json(StudyFile.write(old.get()));
    for (boolean deep : new boolean[] {true, false}) {
      RevisedJson revised = RevisedJson.of(bare, was, json(wanted), deep);
      try {
        Source draft = new Source.Draft(path().resolve(STUDY), revised.text());
        if (StudyFile.write(StudyFile.read(draft)).equals(wanted)) {
          return revised;
        }
      } catch (BadInput e) {
        // A change that hangs on another is not to be had in parts.
        continue;
      }
    }
    return new RevisedJson(wanted, RevisedJson.commentsOf(bare));
  }

  private static JsonNode json(String text) {
    try {
      return JSON.readTree(text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static TableLayout layout(KeptFolder.Contents held, String name, Set<String> known) {
    Optional<byte[]> file = held.find(name);
    if (file.isEmpty() || text(file.get(), name).isBlank()) {
      return TableLayout.USUAL;
    }
    // What the page could not read it does not show, and so must not replace.
    tableOf(held, name);
    return TableLayout.of(file.get(), text(file.get(), name), name, known);
  }

  private static PageTable tableOf(KeptFolder.Contents held, String name) {
    boolean counts = name.equals(WASHES);
    return PageTable.of(
        text(held.find(name).orElseThrow(), name),
        name,
        counts ? KNOWN_WASH_COLUMNS : KNOWN_TREATMENT_COLUMNS,
        counts ? WASH_COLUMNS : TREATMENT_COLUMNS);
  }

  /** Without columns in which nothing stands and which the file does not have. */
  private static PageTable trimmed(PageTable table, TableLayout layout) {
    List<Integer> kept = new ArrayList<>();
    for (int i = 0; i < table.columns().size(); i++) {
      int column = i;
      if (NEEDED.contains(table.columns().get(i))
          || layout.has(table.columns().get(i))
          || table.rows().stream().anyMatch(row -> !row.get(column).isEmpty())) {
        kept.add(i);
      }
    }
    return new PageTable(
        kept.stream().map(table.columns()::get).toList(),
        table.rows().stream()
            .map(row -> kept.stream().map(row::get).toList())
            .filter(row -> row.stream().anyMatch(cell -> !cell.isEmpty()))
            .toList());
  }

  /**
   * {@return what the saved files say together}
   *
   * @throws broodtide.measure.RefusedException when something is missing or faulty
   */
  Apiary apiary() {
    KeptFolder.Contents held = folder.read();
    Study study =
        study(held)
            .orElseThrow(() -> new Missing("say first where the hives stand, under \"Where\""));
    if (held.find(WASHES).isEmpty()) {
      throw new Missing("there is no count yet; enter one under \"Counts\"");
    }
    TableCheck check = check();
    WashFile washes =
        check
            .washes(tableOf(held, WASHES))
            .orElseThrow(() -> new Missing("there is no count yet; enter one under \"Counts\""));
    Optional<TreatmentFile> treatments =
        held.find(TREATMENTS).isEmpty()
            ? Optional.empty()
            : check.treatments(tableOf(held, TREATMENTS));
    return new Apiary(held.version(), study, washes, ApiaryCases.of(study, washes, treatments));
  }
}
