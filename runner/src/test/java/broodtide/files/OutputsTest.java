package broodtide.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputsTest {
  @TempDir Path dir;

  @Test
  void writesWholeFilesOverOlderAndLongerOnes() throws IOException {
    Outputs outputs = Outputs.into(dir.resolve("a/b"));
    outputs.write("chart.svg", "x".repeat(100_000));
    Path file = outputs.write("chart.svg", "<svg/>");
    assertThat(file).hasContent("<svg/>");
    assertThat(names(outputs.folder())).containsExactly("chart.svg");
  }

  @Test
  void aFolderThatIsAFileIsRefused() throws IOException {
    Path file = Files.writeString(dir.resolve("taken"), "mine");
    assertThatThrownBy(() -> Outputs.into(file))
        .isInstanceOf(OutputRefused.class)
        .hasMessageContaining(file.toString())
        .hasMessageContaining("in the way")
        .hasMessageContaining("--out");
    assertThatThrownBy(() -> Outputs.into(file.resolve("below"))).isInstanceOf(OutputRefused.class);
    assertThat(file).hasContent("mine");
  }

  @Test
  void aFolderThatCannotBeWrittenIsRefused() {
    // Not even the superuser can make files in the kernel's own folder.
    Path kernel = Path.of("/proc");
    org.junit.jupiter.api.Assumptions.assumeTrue(Files.isDirectory(kernel));
    assertThatThrownBy(() -> Outputs.into(kernel))
        .isInstanceOf(OutputRefused.class)
        .hasMessageContaining("/proc");
  }

  @Test
  void nothingIsLeftWhenOneOfSeveralFails() throws IOException {
    Outputs outputs = Outputs.into(dir);
    outputs.write("old.csv", "old");
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("new.csv", new byte[] {1});
    files.put("../escape.csv", new byte[] {2});
    assertThatThrownBy(() -> outputs.write(files)).hasMessageContaining("plain name");
    assertThat(names(dir)).containsExactly("old.csv");
  }

  @Test
  void aFolderInTheWayOfAFileIsLeftAlone() throws IOException {
    Files.createDirectory(dir.resolve("report.html"));
    Outputs outputs = Outputs.into(dir);
    assertThatThrownBy(() -> outputs.write("report.html", "x"))
        .isInstanceOf(OutputRefused.class)
        .hasMessageContaining("a folder of this name");
    assertThat(names(dir)).containsExactly("report.html");
  }

  @Test
  void namesMadeFromWords() {
    assertThat(Outputs.name("Hive 7/left")).isEqualTo("hive-7-left");
    assertThat(Outputs.name("../..")).isEqualTo("unnamed");
    assertThat(Outputs.name("R\u00fccken \u00c9t\u00e9")).isEqualTo("rucken-ete");
  }

  private static Iterable<String> names(Path folder) throws IOException {
    try (Stream<Path> list = Files.list(folder)) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }
}
