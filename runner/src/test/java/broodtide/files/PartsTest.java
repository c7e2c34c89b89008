package broodtide.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that were begun and not finished leave nothing behind. */
class PartsTest {
  @TempDir Path dir;

  @Test
  void aTrialLeavesNoFolder() {
    Outputs.into(dir.resolve("a/b"));
    assertThat(dir.resolve("a")).doesNotExist();
  }

  @Test
  void whatIsNotPlacedIsGoneAndSoAreItsFolders() throws IOException {
    Path folder = dir.resolve("a/b");
    try (Parts parts = Parts.in(folder)) {
      parts.fill(folder.resolve("one"), new byte[] {1});
      assertThat(folder).isDirectory();
      assertThat(folder.resolve("one")).doesNotExist();
    }
    assertThat(dir.resolve("a")).doesNotExist();
  }

  @Test
  void whatIsPlacedStays() throws IOException {
    Path folder = dir.resolve("a/b");
    try (Parts parts = Parts.in(folder)) {
      parts.fill(folder.resolve("one"), new byte[] {1});
      parts.fill(folder.resolve("two"), new byte[] {2});
      parts.place();
    }
    assertThat(names(folder)).containsExactly("one", "two");
    assertThat(folder.resolve("one")).hasBinaryContent(new byte[] {1});
  }

  @Test
  void afterAStopNothingMoreIsWritten() throws IOException {
    Parts parts = Parts.in(dir);
    parts.fill(dir.resolve("one"), new byte[] {1});
    parts.close();
    assertThatThrownBy(() -> parts.fill(dir.resolve("two"), new byte[] {2}))
        .hasMessage("the program was stopped");
    assertThatThrownBy(parts::place).hasMessage("the program was stopped");
    assertThat(names(dir)).isEmpty();
  }

  /** A second program is stopped between its first file and its second. */
  @Test
  void aStoppedProgramLeavesNothing() throws IOException, InterruptedException {
    Path folder = dir.resolve("out");
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Begun.class.getName(),
                folder.toString())
            .redirectErrorStream(true)
            .start();
    try (BufferedReader said =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      assertThat(said.readLine()).isEqualTo("begun");
      assertThat(names(folder)).hasSize(1).allMatch(n -> n.endsWith(".part"));
      process.destroy();
      assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    }
    assertThat(folder).doesNotExist();
  }

  /** Run by the test above. */
  static final class Begun {
    private Begun() {}

    public static void main(String[] args) throws IOException, InterruptedException {
      Path folder = Path.of(args[0]);
      try (Parts parts = Parts.in(folder)) {
        parts.fill(folder.resolve("one"), new byte[] {1});
        System.out.println("begun");
        System.out.flush();
        TimeUnit.MINUTES.sleep(1);
      }
    }
  }

  private static Iterable<String> names(Path folder) throws IOException {
    try (Stream<Path> list = Files.list(folder)) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }
}
