package broodtide.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Results appear together, and nothing that is not ours is replaced. */
class OutputsTest {
  @TempDir Path dir;

  private Outputs outputs(String... names) {
    return Outputs.into(dir, "compare", List.of(), List.of(names));
  }

  private static Map<String, byte[]> files(String... namesAndTexts) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    for (int i = 0; i < namesAndTexts.length; i += 2) {
      files.put(namesAndTexts[i], namesAndTexts[i + 1].getBytes(StandardCharsets.UTF_8));
    }
    return files;
  }

  private List<String> names() throws IOException {
    try (Stream<Path> list = Files.list(dir)) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }

  private void stage(String... namesAndTexts) throws IOException {
    Path stage = Files.createDirectory(dir.resolve(Generation.STAGE));
    for (Map.Entry<String, byte[]> f : files(namesAndTexts).entrySet()) {
      Files.write(stage.resolve(f.getKey()), f.getValue());
    }
  }

  @Test
  void choosingAFolderLeavesNothing() {
    Outputs.into(dir.resolve("a/b"), "compare", List.of(), List.of("x.svg"));
    assertThat(dir.resolve("a")).doesNotExist();
  }

  @Test
  void theManifestNamesWhatWasWritten() throws IOException {
    outputs("a.csv").write(files("a.csv", "abc"));
    assertThat(names()).containsExactly("a.csv", Manifest.NAME);
    // The sum is the published example of SHA-256 (FIPS 180-2, appendix B.1).
    assertThat(dir.resolve(Manifest.NAME))
        .content()
        .contains("compare", "a.csv", "3")
        .contains("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  }

  @Test
  void filesOfTheLastRunDoNotStayBesideNewOnes() throws IOException {
    outputs("a.csv").write(files("a.csv", "old", "hive-1.svg", "<svg/>", "hive-2.svg", "<svg/>"));
    Files.writeString(dir.resolve("hive-2.svg"), "<svg>my own changes</svg>");
    outputs("a.csv").write(files("a.csv", "new"));
    assertThat(names()).containsExactly("a.csv", Manifest.NAME, "hive-2.svg");
    assertThat(dir.resolve("a.csv")).hasContent("new");
    assertThat(dir.resolve("hive-2.svg")).hasContent("<svg>my own changes</svg>");
  }

  @Test
  void aFileThatIsNotOursIsLeftAlone() throws IOException {
    Files.writeString(dir.resolve("a.csv"), "mine");
    assertThatThrownBy(() -> outputs("a.csv"))
        .isInstanceOf(OutputRefused.class)
        .hasMessageContainingAll("a.csv", "was not written by this program", "--out");
    assertThat(dir.resolve("a.csv")).hasContent("mine");
    assertThat(names()).containsExactly("a.csv");
  }

  @Test
  void aFileThatWasChangedIsLeftAlone() throws IOException {
    outputs("a.csv").write(files("a.csv", "old"));
    Files.writeString(dir.resolve("a.csv"), "odd");
    assertThatThrownBy(() -> outputs("a.csv")).hasMessageContainingAll("a.csv", "was changed");
    assertThat(dir.resolve("a.csv")).hasContent("odd");
  }

  @Test
  void capitalLettersMakeNoDifference() throws IOException {
    Files.writeString(dir.resolve("A.CSV"), "mine");
    assertThatThrownBy(() -> outputs("a.csv")).hasMessageContaining("A.CSV");
  }

  @Test
  void aLinkIsNoFileOfOurs() throws IOException {
    outputs("a.csv").write(files("a.csv", "same"));
    Path mine = Files.writeString(dir.resolve("mine"), "same");
    Files.delete(dir.resolve("a.csv"));
    Files.createSymbolicLink(dir.resolve("a.csv"), mine);
    assertThatThrownBy(() -> outputs("a.csv")).hasMessageContaining("a.csv");
    assertThat(mine).hasContent("same");
  }

  @Test
  void anInputIsLeftAloneUnderAnyOfItsNames() throws IOException {
    outputs("a.csv").write(files("a.csv", "input"));
    Path hard = Files.createLink(dir.resolve("hard"), dir.resolve("a.csv"));
    Path soft = Files.createSymbolicLink(dir.resolve("soft"), dir.resolve("a.csv"));
    for (Path input : List.of(hard, soft, dir.resolve("../" + dir.getFileName() + "/a.csv"))) {
      assertThatThrownBy(() -> Outputs.into(dir, "compare", List.of(input), List.of("b.csv")))
          .as("as " + input)
          .hasMessageContainingAll("a.csv", "is read by this run");
    }
  }

  @Test
  void aManifestOfAnotherKindIsLeftAlone() throws IOException {
    for (String text : List.of("", "date,mites\n", "[1]", "{\"format\": 2, \"files\": {}}")) {
      Files.writeString(dir.resolve(Manifest.NAME), text);
      assertThatThrownBy(() -> outputs("a.csv")).hasMessageContaining(Manifest.NAME);
      assertThat(dir.resolve(Manifest.NAME)).hasContent(text);
    }
  }

  @Test
  void aManifestLeadsToNoFileElsewhere() throws IOException {
    Path out = Files.createDirectory(dir.resolve("out"));
    Path mine = Files.writeString(dir.resolve("mine"), "abc");
    Manifest bad = manifest(files("../mine", "abc"));
    Files.write(out.resolve(Manifest.NAME), bad.json());
    Outputs.into(out, "compare", List.of(), List.of("a.csv")).write(files("a.csv", "new"));
    assertThat(mine).hasContent("abc");
  }

  @Test
  void handedOverFilesAreTheUsers() throws IOException {
    Outputs.handedOver(dir, List.of("study.json")).write(files("study.json", "{}"));
    assertThat(names()).containsExactly("study.json");
    assertThatThrownBy(() -> Outputs.handedOver(dir, List.of("study.json")))
        .hasMessageContaining("study.json");
    outputs("a.csv").write(files("a.csv", "x"));
    assertThat(dir.resolve("study.json")).hasContent("{}");
  }

  @Test
  void aStageThatIsNotWholeIsThrownAway() throws IOException {
    outputs("a.csv").write(files("a.csv", "old"));
    stage("a.csv", "ne");
    outputs("a.csv");
    assertThat(names()).containsExactly("a.csv", Manifest.NAME);
    assertThat(dir.resolve("a.csv")).hasContent("old");
  }

  @Test
  void aWholeStageIsMovedIntoPlace() throws IOException {
    outputs("a.csv").write(files("a.csv", "old a", "b.csv", "old b", "c.csv", "old c"));
    // The run died when a.csv was in place and c.csv not yet taken away.
    stage("b.csv", "new b");
    Files.writeString(dir.resolve("a.csv"), "new a");
    Manifest next = manifest(files("a.csv", "new a", "b.csv", "new b"));
    Files.write(dir.resolve(Generation.STAGE).resolve(Manifest.NAME), next.json());
    outputs("a.csv");
    assertThat(names()).containsExactly("a.csv", "b.csv", Manifest.NAME);
    assertThat(dir.resolve("a.csv")).hasContent("new a");
    assertThat(dir.resolve("b.csv")).hasContent("new b");
    assertThat(Manifest.in(dir)).isEqualTo(next);
  }

  @Test
  void aFileOfTheUsersStopsALateMove() throws IOException {
    stage("b.csv", "new b");
    Files.write(
        dir.resolve(Generation.STAGE).resolve(Manifest.NAME),
        manifest(files("b.csv", "new b")).json());
    Files.writeString(dir.resolve("b.csv"), "mine");
    assertThatThrownBy(() -> outputs("a.csv")).hasMessageContaining("b.csv");
    assertThat(dir.resolve("b.csv")).hasContent("mine");
  }

  @Test
  void nothingIsChangedWhenOneOfSeveralFails() throws IOException {
    Outputs outputs = outputs("a.csv");
    outputs.write(files("a.csv", "old"));
    assertThatThrownBy(() -> outputs.write(files("a.csv", "new", "../escape.csv", "x")))
        .hasMessageContaining("plain name");
    // No disk has names as long as this.
    assertThatThrownBy(() -> outputs.write(files("a.csv", "new", "x".repeat(5000), "x")))
        .isInstanceOf(OutputRefused.class);
    assertThat(names()).containsExactly("a.csv", Manifest.NAME);
    assertThat(dir.resolve("a.csv")).hasContent("old");
  }

  @Test
  void manyRunsAtOnceEndWithOneGeneration() throws Exception {
    ExecutorService runs = Executors.newFixedThreadPool(4);
    try {
      List<Future<?>> all = new ArrayList<>();
      for (int run = 0; run < 24; run++) {
        String text = "of run " + run;
        all.add(
            runs.submit(
                () -> outputs("a", "b").write(files("a", text, "b", text, "p-" + text, text))));
      }
      for (Future<?> run : all) {
        run.get();
      }
    } finally {
      runs.shutdownNow();
    }
    String last = Files.readString(dir.resolve("a"));
    assertThat(dir.resolve("b")).hasContent(last);
    assertThat(names()).containsExactly("a", "b", Manifest.NAME, "p-" + last);
  }

  @Test
  void aFolderThatIsAFileIsRefused() throws IOException {
    Path file = Files.writeString(dir.resolve("taken"), "mine");
    for (Path folder : List.of(file, file.resolve("below"))) {
      assertThatThrownBy(() -> Outputs.into(folder, "compare", List.of(), List.of()))
          .isInstanceOf(OutputRefused.class)
          .hasMessageContainingAll("taken", "--out");
    }
    assertThat(file).hasContent("mine");
  }

  @Test
  void aFolderThatCannotBeWrittenIsRefused() {
    // Not even the superuser can make files in the kernel's own folder.
    Path kernel = Path.of("/proc");
    Assumptions.assumeTrue(Files.isDirectory(kernel));
    assertThatThrownBy(() -> Outputs.into(kernel, "compare", List.of(), List.of()))
        .isInstanceOf(OutputRefused.class)
        .hasMessageContaining("/proc");
  }

  @Test
  void aFolderInTheWayOfAFileIsLeftAlone() throws IOException {
    Files.createDirectory(dir.resolve("report.html"));
    assertThatThrownBy(() -> outputs("report.html"))
        .isInstanceOf(OutputRefused.class)
        .hasMessageContaining("a folder of this name");
    assertThat(names()).containsExactly("report.html");
  }

  @Test
  void namesMadeFromWords() {
    assertThat(Outputs.name("Hive 7/left")).isEqualTo("hive-7-left");
    assertThat(Outputs.name("../..")).isEqualTo("unnamed");
    assertThat(Outputs.name("R\u00fccken \u00c9t\u00e9")).isEqualTo("rucken-ete");
  }

  private static Manifest manifest(Map<String, byte[]> contents) {
    TreeMap<String, Manifest.Sum> sums = new TreeMap<>();
    contents.forEach(
        (name, bytes) -> {
          MessageDigest digest = Manifest.Sum.digest();
          digest.update(bytes);
          sums.put(name, Manifest.Sum.of(bytes.length, digest));
        });
    return new Manifest("compare", sums);
  }
}
