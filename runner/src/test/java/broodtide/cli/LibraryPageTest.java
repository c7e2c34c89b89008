package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.api.parallel.Resources;

/** The programs that the page shows compile, run, and print what the command prints. */
@Tag("slow")
@ResourceLock(Resources.SYSTEM_OUT)
class LibraryPageTest {
  private static final Pattern PROGRAM =
      Pattern.compile("```java\n(public static void main.*?)```", Pattern.DOTALL);
  private static final String IMPORTS =
      """
      import broodtide.assessment.*;
      import broodtide.catalog.*;
      import broodtide.engine.*;
      import broodtide.fit.SeasonPosterior.SamplerSettings;
      import broodtide.study.*;
      import broodtide.wash.Wash;
      import java.nio.file.Path;
      import java.time.LocalDate;
      import java.util.List;
      import java.util.Map;

      """;

  @TempDir private Path folder = Path.of("");

  @Test
  void tableOfWashesGivesWhatCompareGives() throws Exception {
    Path washes = folder.resolve("washes.csv");
    Files.writeString(
        washes,
        """
        date,colony,mites,bees
        2025-06-10,Upper,2,310
        2025-07-28,Upper,9,300
        2025-07-20,Lower,0,300
        """);
    same(
        run(programs().get(0), washes.toString()),
        "compare",
        washes.toString(),
        "--climate",
        "temperate");
  }

  @Test
  void studyGivesWhatCompareGives() throws Exception {
    same(run(programs().get(1), "late-wash"), "compare", "--study", "late-wash");
  }

  private static List<String> programs() throws IOException {
    String page = Files.readString(Path.of("../model/LIBRARY.md"));
    List<String> out = PROGRAM.matcher(page).results().map(m -> m.group(1)).toList();
    assertThat(out).hasSize(2);
    return out;
  }

  private String run(String program, String argument) throws Exception {
    Path source = folder.resolve("Example.java");
    Files.writeString(source, IMPORTS + "public class Example {\n" + program + "}\n");
    ByteArrayOutputStream errors = new ByteArrayOutputStream();
    int code =
        ToolProvider.getSystemJavaCompiler()
            .run(
                null,
                errors,
                errors,
                "-proc:none",
                "-cp",
                classPath(),
                "-d",
                folder.toString(),
                source.toString());
    assertThat(code).as(errors.toString(StandardCharsets.UTF_8)).isZero();
    PrintStream before = System.out;
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    try (URLClassLoader loader =
        new URLClassLoader(new URL[] {folder.toUri().toURL()}, getClass().getClassLoader())) {
      System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
      loader
          .loadClass("Example")
          .getMethod("main", String[].class)
          .invoke(null, (Object) new String[] {argument});
    } finally {
      System.setOut(before);
    }
    return printed.toString(StandardCharsets.UTF_8);
  }

  /** Where the classes that the page uses are, however the tests were started. */
  private static String classPath() throws Exception {
    List<String> out = new ArrayList<>();
    for (Class<?> each :
        List.of(
            broodtide.engine.Workers.class,
            broodtide.study.Study.class,
            org.apache.commons.math3.util.FastMath.class,
            com.fasterxml.jackson.databind.JsonNode.class,
            org.jspecify.annotations.NullMarked.class)) {
      out.add(Path.of(each.getProtectionDomain().getCodeSource().getLocation().toURI()).toString());
    }
    return String.join(java.io.File.pathSeparator, out);
  }

  private void same(String printed, String... command) throws IOException {
    List<String> words = new ArrayList<>(List.of(command));
    words.addAll(List.of("--json", "--out", folder.resolve("out").toString()));
    Trial trial = Trial.run("", words.toArray(String[]::new));
    assertThat(trial.code()).as(trial.err()).isZero();
    List<String> lines = printed.lines().toList();
    JsonNode colonies = new ObjectMapper().readTree(trial.out()).get("colonies");
    assertThat(lines).hasSize(colonies.size());
    for (int i = 0; i < lines.size(); i++) {
      String[] parts = lines.get(i).split(": |; ");
      JsonNode decision = colonies.get(i).get("decision");
      assertThat(parts[0]).isEqualTo(colonies.get(i).get("colony").asText());
      assertThat(
              new BigDecimal(Double.parseDouble(parts[1]))
                  .round(new MathContext(4, RoundingMode.HALF_EVEN)))
          .isEqualByComparingTo(decision.at("/waiting/winterLoss").decimalValue());
      assertThat(parts[2]).isEqualTo(decision.at("/best/plan").asText());
    }
  }
}
