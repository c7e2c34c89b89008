package broodtide.cli;

import broodtide.catalog.Catalog;
import broodtide.classroom.ClassSite;
import broodtide.lesson.Lesson;
import broodtide.lesson.LessonPlace;
import broodtide.lesson.Lessons;
import broodtide.lesson.StudySchema;
import broodtide.web.LocalServer;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A local page for teaching. */
@Command(
    name = "class",
    mixinStandardHelpOptions = true,
    header = "A page for teaching, on this machine.",
    description = {
      "A web page for teaching, for this machine alone. It opens on lessons in which the class"
          + " predicts first and then looks, with worksheets to print. It also has a colony to"
          + " play with. Page Down and Page Up, as a clicker sends them, lead through an evening."
    },
    footer = {
      "  broodtide class --climate cool-maritime",
      "  broodtide class --port 8080 --browser",
      "  broodtide class --lesson my-lesson.json --check"
    })
final class ClassCommand implements Callable<Integer> {
  /** Climate of the class where none is named. */
  static final String USUAL = "temperate";

  private final CommandContext desk;

  @Mixin private PageOptions options = new PageOptions();

  @Option(
      names = "--climate",
      paramLabel = "CLIMATE",
      description =
          "Climate of the page and of its lessons, by name or path of a JSON file. Default:"
              + " temperate; each lesson then has its own. Known: ${COMPLETION-CANDIDATES}.",
      completionCandidates = KnownWords.Climates.class)
  private @Nullable String climate;

  @Option(names = "--south", description = "The place is south of the equator.")
  private boolean south;

  @Option(
      names = "--lesson",
      paramLabel = "FILE",
      description =
          "A lesson of your own, shown before all others: a JSON file, or the name of a shipped"
              + " lesson. May be given several times.")
  private List<String> lessons = List.of();

  @Option(
      names = "--check",
      description =
          "Opens no page: says whether each --lesson is well formed, and whether the figures show"
              + " what it claims.")
  private boolean check;

  @Option(
      names = "--schema",
      description = "Opens no page: prints the JSON Schema of lessons, for editors.")
  private boolean schema;

  @Option(names = "--browser", description = "Also opens the page in the browser.")
  private boolean browser;

  @Mixin private JsonOption as = new JsonOption();

  ClassCommand(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() throws InterruptedException {
    if (schema) {
      desk.out().println(StudySchema.lesson().stripTrailing());
      desk.deliver();
      return Main.OK;
    }
    LessonPlace place = new LessonPlace(Optional.ofNullable(climate).map(Catalog::climate), south);
    List<Lesson> own = lessons.stream().map(Lessons::named).toList();
    if (check) {
      if (own.isEmpty()) {
        throw new Refusal("--check looks at lessons; give one with --lesson FILE");
      }
      return new LessonCheck(desk, place).of(own, as.json);
    }
    int port = options.port();
    try (LocalServer page =
        LocalServer.open(
            port,
            new ClassSite(Catalog.climate(climate == null ? USUAL : climate), place, own),
            e -> desk.err().println(ProgramFault.line(e, false, List.of("class"))))) {
      if (as.json) {
        desk.out().println(address(page.address().toString()));
      } else {
        desk.out().println("The class page is at " + page.address());
        desk.out().println("Open it in a browser on this machine. Ctrl-C ends it.");
      }
      options.keepOpen(desk, page.address(), browser);
    } catch (IOException e) {
      throw options.notFree(e);
    }
    return Main.OK;
  }

  private static String address(String address) {
    return new ObjectMapper().createObjectNode().put("address", address).toString();
  }
}
