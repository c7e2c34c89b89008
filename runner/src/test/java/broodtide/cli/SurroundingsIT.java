package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packed program as others run it: their locale, clock, folders, disks and pipes. */
@Tag("slow")
class SurroundingsIT {
  private static final String NAMES = "Bien\u00e8re \u00c4 \u4e2d";

  @TempDir Path dir;

  @BeforeEach
  void washes() throws IOException {
    Files.writeString(
        dir.resolve("w.csv"),
        "date,colony,mites,bees\n2024-02-29,\u0130st\u0131k,1,310\n2024-05-20,\u0130st\u0131k,2,\n",
        StandardCharsets.UTF_8);
  }

  /** What came of a process, its two outputs in one. */
  private record Ended(int code, String said) {}

  private static Path jar() {
    return Path.of(System.getProperty("broodtide.jar", "target/broodtide.jar"));
  }

  private static List<String> java(String... flags) {
    List<String> out = new ArrayList<>();
    out.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    out.addAll(List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-XX:-UsePerfData"));
    out.addAll(List.of(flags));
    out.addAll(List.of("-jar", jar().toAbsolutePath().toString()));
    return out;
  }

  private static List<String> with(List<String> first, String... more) {
    return Stream.concat(first.stream(), Stream.of(more)).toList();
  }

  private Ended run(Map<String, String> environment, List<String> command)
      throws IOException, InterruptedException {
    ProcessBuilder builder =
        new ProcessBuilder(command).directory(dir.toFile()).redirectErrorStream(true);
    builder.environment().keySet().removeIf(k -> k.startsWith("LC_") || k.equals("LANG"));
    builder.environment().put("LC_ALL", "C.UTF-8");
    builder.environment().putAll(environment);
    builder.environment().values().removeIf(String::isEmpty);
    builder.redirectInput(ProcessBuilder.Redirect.from(new File("/dev/null")));
    Process process = builder.start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
    return new Ended(process.exitValue(), said);
  }

  /** The same through a shell, where {@code $@} stands for the program. */
  private Ended shell(String script, List<String> program)
      throws IOException, InterruptedException {
    assumeTrue(Files.isExecutable(Path.of("/bin/bash")), "needs bash");
    return run(
        Map.of(), with(List.of("/bin/bash", "-c", script, "bash"), program.toArray(String[]::new)));
  }

  private Map<String, byte[]> files(String folder) throws IOException {
    Map<String, byte[]> out = new TreeMap<>();
    try (Stream<Path> list = Files.list(dir.resolve(folder))) {
      for (Path p : list.toList()) {
        out.put(p.getFileName().toString(), Files.readAllBytes(p));
      }
    }
    return out;
  }

  private static final String[] COMPARE = {
    "compare", "w.csv", "--climate", "temperate", "--colonies", "64", "--out", "out"
  };

  /**
   * Decimal commas, the dotless i, other digits, other calendars, and days that begin elsewhere.
   */
  @Test
  void sameBytesInEveryLocaleAndTimeZone() throws Exception {
    Ended plain = run(Map.of(), with(java("-Duser.language=en", "-Duser.timezone=UTC"), COMPARE));
    assertThat(plain.code()).as(plain.said()).isZero();
    Map<String, byte[]> expected = files("out");
    String[][] places = {
      {"-Duser.language=de", "-Duser.country=DE", "-Duser.timezone=Pacific/Kiritimati"},
      {"-Duser.language=tr", "-Duser.country=TR", "-Duser.timezone=America/Los_Angeles"},
      {"-Duser.language=ar", "-Duser.country=EG", "-Duser.extensions=u-nu-arab"},
      {"-Duser.language=th", "-Duser.country=TH", "-Duser.extensions=u-ca-buddhist-nu-thai"}
    };
    for (String[] place : places) {
      Ended there = run(Map.of(), with(java(place), COMPARE));
      assertThat(there).as(String.join(" ", place)).isEqualTo(plain);
      Map<String, byte[]> found = files("out");
      assertThat(found.keySet()).isEqualTo(expected.keySet());
      found.forEach((name, bytes) -> assertThat(bytes).as(name).isEqualTo(expected.get(name)));
    }
  }

  @Test
  void otherCommandsSayTheSameInEveryLocale() throws Exception {
    for (String call : List.of("growth w.csv", "wash 7 --bees 300 --date 2024-02-29")) {
      String[] args = (call + " --climate boreal").split(" ");
      Ended plain = run(Map.of(), with(java("-Duser.language=en"), args));
      Ended turkish = run(Map.of(), with(java("-Duser.language=tr", "-Duser.country=TR"), args));
      Ended persian =
          run(Map.of(), with(java("-Duser.language=fa", "-Duser.extensions=u-nu-arabext"), args));
      assertThat(plain.code()).as(plain.said()).isZero();
      assertThat(turkish).isEqualTo(plain);
      assertThat(persian).isEqualTo(plain);
    }
  }

  @Test
  void aFullDiskIsSaidAndLeavesNothing() throws Exception {
    assumeTrue(Files.exists(Path.of("/dev/full")), "needs /dev/full");
    Ended full =
        shell(
            "\"$@\" 2>&1 >/dev/full",
            with(
                java(),
                "wash",
                "7",
                "--bees",
                "300",
                "--date",
                "2024-02-29",
                "--climate",
                "temperate"));
    assertThat(full.code()).as(full.said()).isEqualTo(2);
    assertThat(full.said()).contains("cannot write to standard output").doesNotContain("\tat ");
    // No file may grow beyond 16 blocks, which the smallest of the results fit in and others do
    // not.
    Ended small = shell("ulimit -f 16; \"$@\"", with(java("-Xshare:off"), COMPARE));
    assertThat(small.code()).as(small.said()).isEqualTo(2);
    assertThat(small.said()).contains("cannot write").doesNotContain("\tat ");
    assertThat(dir.resolve("out")).doesNotExist();
  }

  @Test
  void aReaderThatLeavesEarlyIsNoFault() throws Exception {
    Ended head = shell("set -o pipefail; \"$@\" | head -n 1", with(java(), COMPARE));
    assertThat(head.code()).as(head.said()).isZero();
    assertThat(head.said().lines()).hasSize(1);
    assertThat(files("out")).containsKeys("results.json", "report.html");
  }

  @Test
  void withoutInputOrOutputItEndsCleanly() throws Exception {
    Ended noInput = shell("\"$@\" <&-", with(java(), "growth", "-", "--climate", "temperate"));
    assertThat(noInput.code()).isEqualTo(2);
    assertThat(noInput.said()).contains("standard input").doesNotContain("\tat ");
    Ended noOutput = shell("\"$@\" >&-", with(java(), COMPARE));
    assertThat(noOutput.code()).as(noOutput.said()).isEqualTo(2);
    assertThat(noOutput.said()).contains("cannot write to standard output").doesNotContain("\tat ");
    assertThat(dir.resolve("out")).doesNotExist();
  }

  @Test
  void withoutHomeOrFonts() throws Exception {
    assumeTrue(System.getProperty("os.name", "").equals("Linux"), "fontconfig is Linux's");
    Path none = Files.createDirectory(dir.resolve("none"));
    Path config =
        Files.writeString(
            dir.resolve("fonts.conf"),
            "<?xml version=\"1.0\"?><fontconfig><dir>" + none + "</dir></fontconfig>");
    Ended r =
        run(
            Map.of("HOME", "", "FONTCONFIG_FILE", config.toString()),
            with(java("-Duser.home=" + none), COMPARE));
    assertThat(r.code()).as(r.said()).isZero();
    assertThat(r.said()).contains("no fonts were found", "compare.svg").doesNotContain("\tat ");
    assertThat(files("out"))
        .containsKeys("compare.svg", "report.html")
        .doesNotContainKey("compare.png");
  }

  @Test
  void stoppedInTheMiddleItLeavesNoHalfFile() throws Exception {
    Process process =
        new ProcessBuilder(
                with(
                    java(),
                    "compare",
                    "w.csv",
                    "--climate",
                    "temperate",
                    "--colonies",
                    "16384",
                    "--out",
                    "out"))
            .directory(dir.toFile())
            .redirectErrorStream(true)
            .start();
    try (BufferedReader ignored = process.inputReader()) {
      TimeUnit.SECONDS.sleep(2);
      assertThat(process.isAlive()).isTrue();
      process.destroy();
      assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
      assertThat(process.exitValue()).isNotZero();
    }
    assertThat(dir.resolve("out")).doesNotExist();
  }

  @Test
  void namesWithBlanksAndOtherLetters() throws Exception {
    Path odd = Files.createDirectory(dir.resolve(NAMES));
    Files.copy(dir.resolve("w.csv"), odd.resolve("W\u00e4sche 1.csv"));
    Ended r =
        run(
            Map.of(),
            with(
                java(),
                "compare",
                NAMES + "/W\u00e4sche 1.csv",
                "--climate",
                "temperate",
                "--colonies",
                "64",
                "--out",
                NAMES + "/aus g\u00e4be"));
    assertThat(r.code()).as(r.said()).isZero();
    assertThat(files(NAMES + "/aus g\u00e4be")).containsKey("results.json");
    Ended plainC =
        run(
            Map.of("LC_ALL", "C"),
            with(java(), "forecast", NAMES + "/W\u00e4sche 1.csv", "--climate", "temperate"));
    assertThat(plainC.said()).doesNotContain("\tat ");
    if (plainC.code() != 0) {
      assertThat(plainC.code()).isEqualTo(2);
      assertThat(plainC.said()).contains("LC_ALL=C.UTF-8");
    }
  }
}
