package broodtide.cli;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.study.Studies;
import broodtide.study.Study;
import broodtide.study.WashFile;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Whether a study can be played, and everything that is wrong with it and with its washes. */
final class StudyCheck {
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(JsonReadFeature.ALLOW_JAVA_COMMENTS).build();

  private final CommandContext desk;
  private final String file;
  private @Nullable Study study;
  private int washes;

  StudyCheck(CommandContext desk, String file) {
    this.desk = desk;
    this.file = file;
  }

  /**
   * Reads the study and its washes.
   *
   * @throws BadInput with the faults of both
   */
  void read() {
    try {
      study = Studies.named(file);
    } catch (BadInput e) {
      throw washFaults().map(w -> joined(e, w)).orElse(e);
    }
    ColonyOptions options = new ColonyOptions();
    options.study = Path.of(file);
    CaseReader.Cases cases = new CaseReader(desk, options).ofStudy(read(study));
    washes = cases.cases().get(0).washes().size();
  }

  /** Faults of the washes that a faulty study names, if it can be made out which these are. */
  private Optional<BadInput> washFaults() {
    try {
      String named = JSON.readTree(Path.of(file).toFile()).path("washes").textValue();
      if (named == null || named.isEmpty()) {
        return Optional.empty();
      }
      try (InputStream in = Files.newInputStream(Path.of(file).resolveSibling(named))) {
        WashFile.read(in, named, LocalDate.now(desk.clock()));
        return Optional.empty();
      }
    } catch (BadInput e) {
      return Optional.of(e);
    } catch (IOException | InvalidPathException e) {
      // The study's own faults say so.
      return Optional.empty();
    }
  }

  private static BadInput joined(BadInput a, BadInput b) {
    List<Fault> all = new ArrayList<>(a.faults());
    all.addAll(b.faults());
    return new BadInput(all, a.total() + b.total());
  }

  /** What is said of a sound study. */
  String sentence() {
    Study s = read(study);
    return file
        + " is valid: \""
        + s.title()
        + "\", "
        + s.start()
        + " to "
        + s.until()
        + ", "
        + counted(washes, "wash", "washes")
        + ", "
        + counted(s.plans().size(), "plan", "plans")
        + ".";
  }

  /** The same as JSON. */
  ObjectNode sound() {
    Study s = read(study);
    ObjectNode node = JSON.createObjectNode().put("study", file).put("sound", true);
    node.put("title", s.title());
    node.put("start", s.start().toString());
    node.put("until", s.until().toString());
    node.put("washes", washes);
    node.put("plans", s.plans().size());
    node.putArray("faults");
    return node;
  }

  /** What is wrong, as JSON. */
  ObjectNode faulty(RuntimeException e) {
    ObjectNode node = JSON.createObjectNode().put("study", file).put("sound", false);
    ArrayNode faults = node.putArray("faults");
    List<Fault> found =
        e instanceof BadInput b
            ? b.faults()
            : List.of(Fault.of(file, Objects.requireNonNullElse(e.getMessage(), "")));
    for (Fault f : found) {
      ObjectNode fault = faults.addObject().put("file", f.file());
      put(fault, "line", f.line());
      put(fault, "column", f.column());
      if (!f.field().isEmpty()) {
        fault.put("field", f.field());
      }
      if (f.value() != null) {
        fault.put("value", f.value());
      }
      fault.put("message", f.message());
    }
    return node;
  }

  private static void put(ObjectNode node, String field, int place) {
    if (place > 0) {
      node.put(field, place);
    }
  }

  private static Study read(@Nullable Study study) {
    return Objects.requireNonNull(study, "read the study first");
  }

  private static String counted(int n, String one, String many) {
    return n + " " + (n == 1 ? one : many);
  }
}
