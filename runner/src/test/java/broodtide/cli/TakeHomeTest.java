package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the zip to take home is packed from: launchers, samples, the page to start with. */
class TakeHomeTest {
  private static final Path DIST = Path.of("src/dist");
  private static final Path SAMPLES = DIST.resolve("samples");

  @TempDir Path dir;

  private static String text(String name) throws IOException {
    return Files.readString(DIST.resolve(name), StandardCharsets.US_ASCII);
  }

  /** The packing turns these to the ends of lines of Windows, and must find them plain. */
  @ParameterizedTest
  @ValueSource(strings = {"broodtide.bat", "open-broodtide.bat", "START.txt", "THIRD-PARTY.txt"})
  void filesForWindowsGetItsEndsOfLines(String name) throws IOException {
    assertThat(text(name)).doesNotContain("\r").endsWith("\n");
    String assembly = Files.readString(Path.of("src/assembly/zip.xml"));
    String file = assembly.substring(assembly.indexOf("src/dist/" + name + "<"));
    assertThat(file.substring(0, file.indexOf("</file>"))).contains("<lineEnding>dos</lineEnding>");
  }

  @ParameterizedTest
  @ValueSource(strings = {"broodtide.bat", "open-broodtide.bat"})
  void launchersForWindowsKeepOddPathsWhole(String name) throws IOException {
    String bat = text(name);
    assertThat(bat).startsWith("@echo off").contains("DisableDelayedExpansion");
    // Every use of a path stands in quotes; call would take percent signs out of one.
    assertThat(bat.lines().filter(line -> line.contains("%~dp0")))
        .isNotEmpty()
        .allMatch(line -> line.contains("\"%~dp0\"") || line.equals("set \"HERE=%~dp0\""));
    for (String path : List.of("%JAVA%", "%JAR%", "%CANDIDATE%", "%JAVA_HOME%")) {
      Pattern bare = Pattern.compile("(?<![\"=])" + Pattern.quote(path));
      assertThat(bare.matcher(bat).find()).as(path).isFalse();
    }
    assertThat(bat.lines().filter(line -> line.contains("call ")).map(String::strip))
        .isNotEmpty()
        .allMatch(line -> line.equals("call :try") || line.startsWith("call .\\broodtide.bat"));
    assertThat(bat).contains("exit /b %CODE%").doesNotContain("wsl").doesNotContain("bash");
  }

  /** Flags and words that only GNU or bash know would stop the launchers on macOS. */
  @ParameterizedTest
  @ValueSource(strings = {"broodtide", "open-broodtide.command", "lib/launch.sh"})
  void launchersAskForNothingBeyondPosix(String name) throws IOException {
    String shell = text(name);
    assertThat(shell.lines().filter(line -> !line.startsWith("#")))
        .noneMatch(
            line ->
                line.matches(
                    ".*(\\[\\[|readlink|realpath|function |local |<<<|\\bgrep -P|sed -[ri]).*"))
        .noneMatch(line -> line.contains("&>") || line.contains("$'") || line.contains("=("));
    for (String sh : List.of("/bin/dash", "/bin/sh", "/bin/busybox")) {
      if (Files.isExecutable(Path.of(sh))) {
        List<String> words =
            sh.endsWith("busybox")
                ? List.of(sh, "sh", "-n", DIST.resolve(name).toString())
                : List.of(sh, "-n", DIST.resolve(name).toString());
        assertThat(said(words)).as(sh).isEmpty();
      }
    }
  }

  /** The double-click hands the command of the page on, in a folder with an odd name. */
  @Test
  void theDoubleClickOnMacOsRunsInAPosixShell() throws Exception {
    Path shell = Path.of("/bin/dash");
    assumeTrue(Files.isExecutable(shell), "needs dash");
    Path folder = Files.createDirectory(dir.resolve("B\u00e4ume & \"Bienen\""));
    Path opener = folder.resolve("open-broodtide.command");
    Files.writeString(opener, text("open-broodtide.command").replace("${page.command}", "open"));
    Path program = folder.resolve("broodtide");
    Files.writeString(program, "#!/bin/sh\nprintf '<%s>' \"$0\" \"$@\"\nexit 3\n");
    assertThat(program.toFile().setExecutable(true)).isTrue();
    assertThat(said(List.of(shell.toString(), opener.toString())))
        .isEqualTo("<" + program.toRealPath() + "><open>");
  }

  private static String said(List<String> command) throws IOException {
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().put("LC_ALL", "C.UTF-8");
    Process process = builder.start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    try {
      assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return said;
  }

  @Test
  void theSamplesAreReadByThePrograms() {
    Bench.Outcome study = Bench.run("study", "check", SAMPLES.resolve("study.json").toString());
    assertThat(study.code()).as(study.err()).isZero();
    Bench.Outcome growth =
        Bench.run(
            "growth",
            SAMPLES.resolve("washes.csv").toString(),
            "--given",
            SAMPLES.resolve("treatments.csv").toString(),
            "--climate",
            "temperate");
    assertThat(growth.code()).as(growth.err()).isZero();
    assertThat(growth.out()).contains("Alder Row 1", "Alder Row 2");
  }

  /** A page is 60 lines of 100 letters. */
  @Test
  void thePageToStartWithIsOnePage() throws IOException {
    String page = text("START.txt");
    assertThat(page.lines()).hasSizeLessThanOrEqualTo(60).allMatch(line -> line.length() <= 100);
    assertThat(page).contains("Java 17", "open-broodtide.bat", "open-broodtide.command");
    try (Stream<Path> samples = Files.list(SAMPLES)) {
      assertThat(samples.map(file -> "samples/" + file.getFileName())).allMatch(page::contains);
    }
  }
}
