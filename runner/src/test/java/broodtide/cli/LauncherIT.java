package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The launcher of a checkout: where it is, what it builds, which Java it takes. */
@Tag("slow")
class LauncherIT {
  private static final String NAMES = "Bien\u00e8re \u00c4 \u4e2d";
  private static final Path JVM = Path.of(System.getProperty("java.home"));

  @TempDir Path dir;

  /** What came of a process, its two outputs in one. */
  private record Ended(int code, String said) {}

  @BeforeEach
  void washes() throws IOException {
    assumeTrue(Files.isExecutable(Path.of("/bin/bash")), "needs bash");
    Files.writeString(
        dir.resolve("w.csv"),
        "date,colony,mites,bees\n2024-02-29,\u0130st\u0131k,1,310\n2024-05-20,\u0130st\u0131k,2,\n",
        StandardCharsets.UTF_8);
  }

  private static Path jar() {
    return Path.of(System.getProperty("broodtide.jar", "target/broodtide.jar"));
  }

  private Process start(Map<String, String> environment, List<String> command) throws IOException {
    ProcessBuilder builder =
        new ProcessBuilder(command).directory(dir.toFile()).redirectErrorStream(true);
    builder.environment().keySet().removeIf(k -> k.startsWith("LC_") || k.equals("LANG"));
    builder.environment().put("LC_ALL", "C.UTF-8");
    builder.environment().put("JAVA_HOME", JVM.toString());
    builder.environment().putAll(environment);
    builder.environment().values().removeIf(String::isEmpty);
    builder.redirectInput(ProcessBuilder.Redirect.from(new File("/dev/null")));
    return builder.start();
  }

  private static Ended end(Process process) throws IOException, InterruptedException {
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
    return new Ended(process.exitValue(), said);
  }

  private Ended run(Map<String, String> environment, List<String> command)
      throws IOException, InterruptedException {
    return end(start(environment, command));
  }

  private static Path script(Path file, String... lines) throws IOException {
    Files.createDirectories(file.getParent());
    Files.writeString(file, "#!/bin/sh\n" + String.join("\n", lines) + "\n");
    assertThat(file.toFile().setExecutable(true)).isTrue();
    return file;
  }

  /** A checkout of nothing but the launcher. */
  private static Path launcherAlone(Path checkout) throws IOException {
    Path script = Path.of("broodtide").toAbsolutePath();
    assumeTrue(Files.exists(script), "needs the launcher");
    Path runner = Files.createDirectories(checkout.resolve("runner"));
    Path copy = Files.copy(script, runner.resolve("broodtide"));
    assertThat(copy.toFile().setExecutable(true)).isTrue();
    Path lib = Files.createDirectories(runner.resolve("src/dist/lib"));
    Files.copy(Path.of("src/dist/lib/launch.sh"), lib.resolve("launch.sh"));
    Files.createDirectory(runner.resolve("target"));
    return copy;
  }

  /** A checkout of nothing but the launcher and the built program. */
  private static Path launcherIn(Path checkout) throws IOException {
    Path launcher = launcherAlone(checkout);
    Files.copy(jar(), launcher.resolveSibling("target/broodtide.jar"));
    return launcher;
  }

  /** The launcher in a checkout with an odd name, by its path, by a link, from elsewhere. */
  @Test
  void theLauncherFindsItsCheckout() throws Exception {
    Path copy = launcherIn(dir.resolve(NAMES + "/check out"));
    Path link = Files.createSymbolicLink(dir.resolve("l i n k"), copy);
    Path second = Files.createSymbolicLink(copy.resolveSibling("again"), Path.of("broodtide"));
    Map<Path, String> ways = Map.of(copy, "C.UTF-8", link, "C", second, "POSIX");
    for (Map.Entry<Path, String> way : ways.entrySet()) {
      Ended r =
          run(
              Map.of("LC_ALL", way.getValue(), "CDPATH", "/", "HOME", ""),
              List.of(way.getKey().toString(), "growth", "w.csv", "--climate", "temperate"));
      assertThat(r.code()).as(way + ": " + r.said()).isZero();
      assertThat(r.said()).contains("\u0130st\u0131k").doesNotContain("building");
    }
  }

  /** Java takes a colon for the end of a name, so neither build nor run could find its files. */
  @Test
  void aFolderWithAColonIsRefused() throws Exception {
    Ended r = run(Map.of(), List.of(launcherIn(dir.resolve("a:b")).toString(), "--version"));
    assertThat(r.code()).isEqualTo(2);
    assertThat(r.said()).contains("colon", "Rename the folder", "a:b");
  }

  @Test
  void anOldJavaIsPassedOver() throws Exception {
    String old = "echo 'openjdk version \"11.0.22\" 2024-01-16' >&2";
    Path eleven = dir.resolve("eleven");
    script(eleven.resolve("bin/java"), old);
    List<String> version = List.of(launcherIn(dir.resolve("c")).toString(), "--version");
    String path = JVM.resolve("bin") + File.pathSeparator + System.getenv("PATH");
    Ended r = run(Map.of("JAVA_HOME", eleven.toString(), "PATH", path), version);
    assertThat(r.code()).as(r.said()).isZero();
    assertThat(r.said()).contains("broodtide 0.");
  }

  /** Faster starts are had once, and what stands in their way stands in no other. */
  @Test
  void theLauncherLaysOutClassesOnce() throws Exception {
    assumeTrue(Files.exists(JVM.resolve("release")), "needs a JVM that says which it is");
    Path checkout = dir.resolve("a b");
    Path study = checkout.resolve("scenarios/library/studies/larkmeadow.csv");
    Files.createDirectories(study.getParent());
    Files.copy(Path.of("../scenarios/library/studies/larkmeadow.csv"), study);
    Files.setLastModifiedTime(study, FileTime.fromMillis(0)); // older than the build
    List<String> version = List.of(launcherIn(checkout).toString(), "--version");
    // The archive is one for every collector that the user may have set, or none.
    Map<String, String> collector = Map.of("JAVA_TOOL_OPTIONS", "-XX:+UseParallelGC");
    Ended first = run(collector, version);
    assertThat(first.code()).as(first.said()).isZero();
    assertThat(first.said()).contains("laying out classes", "broodtide 0.");
    Path archive = archive(checkout);
    assertThat(archive).isNotEmptyFile();
    assertThat(run(Map.of(), version).said()).startsWith("broodtide 0.");
    assertThat(run(collector, version).said()).contains("broodtide 0.").doesNotContain("laying");

    // The JVM dies of an archive that is cut short.
    assertThat(archive.toFile().setWritable(true)).isTrue();
    try (RandomAccessFile file = new RandomAccessFile(archive.toFile(), "rw")) {
      file.setLength(file.length() / 3);
    }
    Ended damaged = run(Map.of(), version);
    assertThat(damaged.code()).as(damaged.said()).isZero();
    assertThat(damaged.said()).contains("laying out classes", "broodtide 0.");
    assertThat(archive(checkout)).isNotEmptyFile();

    Files.delete(archive(checkout));
    Files.delete(study);
    assertThat(run(Map.of(), version).said()).contains("laying out classes", "broodtide 0.");
    assertThat(archive(checkout)).isEmptyFile();
    assertThat(run(Map.of(), version).said()).startsWith("broodtide 0.");
  }

  /** A spoiled archive of the right size is refused by the JVM, and the program starts without. */
  @Test
  void aSpoiledArchiveDoesNoHarm() throws Exception {
    assumeTrue(Files.exists(JVM.resolve("release")), "needs a JVM that says which it is");
    Path checkout = dir.resolve("s");
    Path study = checkout.resolve("scenarios/library/studies/larkmeadow.csv");
    Files.createDirectories(study.getParent());
    Files.copy(Path.of("../scenarios/library/studies/larkmeadow.csv"), study);
    Files.setLastModifiedTime(study, FileTime.fromMillis(0));
    List<String> version = List.of(launcherIn(checkout).toString(), "--version");
    assertThat(run(Map.of(), version).code()).isZero();
    Path archive = archive(checkout);
    FileTime date = Files.getLastModifiedTime(archive);
    byte[] bytes = Files.readAllBytes(archive);
    for (int i = bytes.length / 8; i < bytes.length; i += 3) {
      bytes[i] ^= 0x5a;
    }
    assertThat(archive.toFile().setWritable(true)).isTrue();
    Files.write(archive, bytes);
    Files.setLastModifiedTime(archive, date);
    Ended r = run(Map.of(), version);
    assertThat(r.code()).as(r.said()).isZero();
    assertThat(r.said()).startsWith("broodtide 0.");
  }

  /**
   * What stands for Maven here takes a while, counts its calls, and moves the jar in at the end.
   */
  private Map<String, String> slowBuild(Path checkout, String seconds) throws IOException {
    script(
        dir.resolve("tools/mvn"),
        "echo built >>'" + dir.resolve("builds") + "'",
        "sleep " + seconds,
        "cp '" + jar().toAbsolutePath() + "' runner/target/half",
        "mv runner/target/half '" + checkout.resolve("runner/target/broodtide.jar") + "'");
    return Map.of("PATH", dir.resolve("tools") + File.pathSeparator + System.getenv("PATH"));
  }

  @Test
  void twoFirstBuildsAtOnceBuildOnce() throws Exception {
    Path checkout = dir.resolve("two");
    List<String> version = List.of(launcherAlone(checkout).toString(), "--version");
    Map<String, String> maven = slowBuild(checkout, "2");
    Process one = start(maven, version);
    Process other = start(maven, version);
    Ended first = end(one);
    Ended second = end(other);
    assertThat(first.code()).as(first.said()).isZero();
    assertThat(second.code()).as(second.said()).isZero();
    assertThat(first.said() + second.said()).containsOnlyOnce("building, which takes");
    assertThat(Files.readAllLines(dir.resolve("builds"))).hasSize(1);
  }

  @Test
  void aBuildThatWasKilledIsBegunAgain() throws Exception {
    Path checkout = dir.resolve("killed");
    List<String> version = List.of(launcherAlone(checkout).toString(), "--version");
    Process killed = start(slowBuild(checkout, "30"), version);
    for (int i = 0; i < 300 && !Files.exists(dir.resolve("builds")); i++) {
      TimeUnit.MILLISECONDS.sleep(100);
    }
    List<ProcessHandle> children = killed.descendants().toList();
    killed.destroyForcibly().waitFor();
    children.forEach(ProcessHandle::destroyForcibly);
    assertThat(checkout.resolve("runner/target/broodtide.jar")).doesNotExist();
    Ended again = run(slowBuild(checkout, "0"), version);
    assertThat(again.code()).as(again.said()).isZero();
    assertThat(again.said()).contains("building, which takes", "broodtide 0.");
    assertThat(Files.readAllLines(dir.resolve("builds"))).hasSize(2);
  }

  private static Path archive(Path checkout) throws IOException {
    try (Stream<Path> built = Files.list(checkout.resolve("runner/target"))) {
      List<Path> all = built.filter(p -> !p.endsWith("broodtide.jar")).toList();
      assertThat(all).hasSize(1);
      return all.get(0);
    }
  }
}
