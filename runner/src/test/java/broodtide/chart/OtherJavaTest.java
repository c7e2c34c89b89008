package broodtide.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Pictures are the same to the byte on any Java installed beside the one that runs the tests. */
class OtherJavaTest {
  @Test
  void everyJavaDrawsTheSameSvg() throws IOException, InterruptedException {
    List<Path> others = others();
    assumeFalse(others.isEmpty(), "no other Java beside this one");
    String here = Sum.of();
    for (Path java : others) {
      Process process =
          new ProcessBuilder(
                  java.toString(),
                  "-Djava.awt.headless=true",
                  "-Duser.language=de",
                  "-cp",
                  System.getProperty("java.class.path"),
                  Sum.class.getName())
              .redirectErrorStream(true)
              .start();
      String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
      assertThat(said.strip()).as(java.toString()).endsWith(here);
    }
  }

  /** One of each release that stands beside this one and is no older. */
  private static List<Path> others() throws IOException {
    Path home = Path.of(System.getProperty("java.home")).toRealPath();
    Path shelf = home.getParent();
    if (shelf == null) {
      return List.of();
    }
    try (Stream<Path> homes = Files.list(shelf)) {
      return homes
          .filter(p -> Files.isExecutable(p.resolve("bin/java")))
          .filter(p -> Files.exists(p.resolve("release")) && newer(p))
          .map(p -> p.resolve("bin/java"))
          .sorted()
          .toList();
    }
  }

  private static boolean newer(Path home) {
    try {
      return Files.readAllLines(home.resolve("release")).stream()
          .filter(line -> line.startsWith("JAVA_VERSION=\""))
          .map(line -> line.replaceAll("[^0-9.]", "").split("\\.", -1)[0])
          .anyMatch(major -> Integer.parseInt(major) > Runtime.version().feature());
    } catch (IOException e) {
      return false;
    }
  }

  /** Run by the test above on another Java. */
  static final class Sum {
    private Sum() {}

    static String of() {
      StringBuilder all = new StringBuilder();
      InventedFigures.all().values().forEach(figure -> all.append(figure.svg()));
      List.of(InventedSeason.crowded(), InventedSeason.colony(), InventedSeason.windows())
          .forEach(picture -> all.append(picture.svg()));
      return all.length() + " " + all.toString().hashCode();
    }

    public static void main(String[] args) {
      System.out.println(of());
    }
  }
}
