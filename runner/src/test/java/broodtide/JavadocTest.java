package broodtide;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import javax.tools.Diagnostic;
import javax.tools.DiagnosticCollector;
import javax.tools.DocumentationTool;
import javax.tools.JavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Everything public in the packages of the library's contract is documented: what it is, every
 * parameter, what comes back, what is thrown; and in all packages every link leads somewhere.
 * Doclint looks at the sources of all three modules.
 *
 * <p>A record's compact constructor takes what the record's own comment documents. Doclint wants it
 * said twice; that complaint is passed over.
 */
class JavadocTest {
  private static final List<String> MODULES = List.of("model", "scenarios", "runner");

  /** The packages that are the library's contract; the others serve the program alone. */
  private static final Set<String> CONTRACT =
      Set.of(
          "measure",
          "season",
          "colony",
          "mite",
          "control",
          "engine",
          "flow",
          "wash",
          "fit",
          "catalog",
          "study",
          "assessment",
          "decision",
          "results");

  private static final String COMPACT_CONSTRUCTOR = "\\s*public [A-Z]\\w* \\{\\s*";

  @TempDir Path pages;

  @Test
  void everythingPublicIsDocumented() throws IOException {
    List<Path> sources = new ArrayList<>();
    for (String module : MODULES) {
      try (Stream<Path> files = Files.walk(Path.of("..", module, "src/main/java"))) {
        files.filter(f -> f.toString().endsWith(".java")).sorted().forEach(sources::add);
      }
    }
    assertThat(complaints(sources)).isEmpty();
  }

  /** The test sees what it is for, and passes over what it should. */
  @Test
  void whatIsMissingIsNamed() throws IOException {
    Path source = pages.resolve("Hive.java");
    Files.writeString(
        source,
        """
        /**
         * A hive.
         *
         * @param frames frames
         */
        public record Hive(int frames) {
          /** Checks. */
          public Hive {
            frames = Math.max(0, frames);
          }

          /** Adds. */
          public int plus(int more) {
            return frames + more;
          }
        }
        """);
    assertThat(complaints(List.of(source)))
        .hasSize(2)
        .anyMatch(c -> c.contains("@param"))
        .anyMatch(c -> c.contains("@return"));
  }

  private List<String> complaints(List<Path> sources) throws IOException {
    DocumentationTool tool = ToolProvider.getSystemDocumentationTool();
    DiagnosticCollector<JavaFileObject> found = new DiagnosticCollector<>();
    try (StandardJavaFileManager files =
        tool.getStandardFileManager(null, Locale.ROOT, StandardCharsets.UTF_8)) {
      List<String> options =
          List.of(
              "-quiet",
              "-public",
              "-Xdoclint:all",
              "-Xmaxwarns",
              "100000",
              "-d",
              pages.toString(),
              "-classpath",
              System.getProperty("java.class.path"));
      StringWriter out = new StringWriter();
      tool.getTask(out, files, found, null, options, files.getJavaFileObjectsFromPaths(sources))
          .call();
    }
    List<String> complaints = new ArrayList<>();
    for (Diagnostic<? extends JavaFileObject> d : found.getDiagnostics()) {
      if (d.getKind() != Diagnostic.Kind.NOTE && !saidByTheRecord(d) && !inside(d)) {
        complaints.add(d.toString());
      }
    }
    return complaints;
  }

  /** What is missing in a package that only the program itself uses. */
  private static boolean inside(Diagnostic<? extends JavaFileObject> d) {
    JavaFileObject source = d.getSource();
    if (source == null || !d.getMessage(Locale.ROOT).startsWith("no ")) {
      return false;
    }
    Path folder = Path.of(source.toUri()).getParent();
    return Files.exists(folder.resolve("package-info.java"))
        && !CONTRACT.contains(folder.getFileName().toString());
  }

  private static boolean saidByTheRecord(Diagnostic<? extends JavaFileObject> d)
      throws IOException {
    JavaFileObject source = d.getSource();
    String message = d.getMessage(Locale.ROOT);
    if (source == null || !message.matches("(?s)no (@param|comment).*")) {
      return false;
    }
    List<String> lines = source.getCharContent(true).toString().lines().toList();
    return lines.get(Math.toIntExact(d.getLineNumber()) - 1).matches(COMPACT_CONSTRUCTOR);
  }
}
