package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command line in a report is one that a shell runs and that gives the same report. */
class ReportCommandLineTest {
  private static final String COLONY = "Hive 7/left; it's $HOME `x` \"q\"";

  @TempDir Path folder;

  private Path washes() throws IOException {
    Path odd = Files.createDirectory(folder.resolve("it's a folder"));
    return Files.writeString(
        odd.resolve("my washes.csv"),
        "date,colony,mites,bees\n2025-05-02,Other,1,300\n"
            + "2025-05-02,\"Hive 7/left; it's $HOME `x` \"\"q\"\"\",1,300\n"
            + "2025-06-20,\"Hive 7/left; it's $HOME `x` \"\"q\"\"\",3,310\n");
  }

  /** The words that a shell makes of the line, without the program's name. */
  private static String[] words(String line) throws IOException, InterruptedException {
    assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "needs a shell");
    Process shell =
        new ProcessBuilder("/bin/sh", "-c", "set -- " + line + "\nshift; printf '%s\\0' \"$@\"")
            .redirectErrorStream(true)
            .start();
    String out = new String(shell.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(shell.waitFor()).as(out).isZero();
    return out.substring(0, out.length() - 1).split("\0", -1);
  }

  private static String line(Path out) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(Files.readAllBytes(out.resolve("report.html"))))
        .getElementsByTagName("code")
        .item(0)
        .getTextContent();
  }

  private static Map<String, String> files(Path folder) throws IOException {
    Map<String, String> out = new TreeMap<>();
    try (Stream<Path> list = Files.list(folder)) {
      for (Path p : list.toList()) {
        out.put(p.getFileName().toString(), Files.readString(p, StandardCharsets.ISO_8859_1));
      }
    }
    return out;
  }

  private static void run(Path out, String... args) {
    List<String> all = new ArrayList<>(List.of(args));
    all.add("--out=" + out);
    Trial trial = Trial.run("", all.toArray(String[]::new));
    assertThat(trial.code()).as(trial.err()).isZero();
  }

  @Test
  void givesTheSameBytesAgain() throws Exception {
    Path first = folder.resolve("first");
    run(
        first,
        "compare",
        washes().toString(),
        "--climate",
        "temperate",
        "--colony",
        COLONY,
        "--plan",
        "on 2025-08-03 with thymol and on 2025-12-20 with oxalic-dribble",
        "--plan=on 2025-08-10 with formic-strips",
        "--south",
        "--neighbours=dense",
        "--seed",
        "3",
        "--colonies=64",
        "--threads",
        "1");
    String line = line(first);
    assertThat(line).containsOnlyOnce("2025-08-03").containsOnlyOnce("2025-08-10");
    assertThat(line).doesNotContain("--out", "--threads");
    Path second = folder.resolve("second");
    run(second, words(line));
    assertThat(files(second)).isEqualTo(files(first));
  }

  /** What the parser would take for an option or for a file of arguments, and the user's home. */
  @Test
  void wordsThatMeanMoreThanTheySay() throws Exception {
    Path washes = washes();
    String home = System.getProperty("user.home");
    String[] shown;
    try {
      System.setProperty("user.home", folder.toString());
      Path out = folder.resolve("out");
      run(
          out,
          "forecast",
          "--washes=" + washes,
          "--colony=Other",
          "--climate=boreal",
          "--colonies=64");
      shown = line(out).split(" --", 3);
      assertThat(line(out)).doesNotContain(folder.toString());
    } finally {
      System.setProperty("user.home", home);
    }
    assertThat(shown[0]).isEqualTo("broodtide forecast");
    assertThat(shown[1]).isEqualTo("washes ~/'it'\\''s a folder/my washes.csv'");
    Path dashed =
        Files.writeString(
            folder.resolve("dashed.csv"),
            "date,colony,mites,bees\n2025-05-02,-x,1,300\n2025-05-02,@x,1,300\n");
    for (String colony : List.of("-x", "@x")) {
      Path first = folder.resolve("first" + colony);
      run(
          first,
          "forecast",
          dashed.toString(),
          "--colony=" + colony,
          "--climate=boreal",
          "--colonies=64");
      assertThat(line(first)).contains("--colony=" + colony);
      Path second = folder.resolve("second" + colony);
      run(second, words(line(first)));
      assertThat(files(second)).isEqualTo(files(first));
    }
  }
}
