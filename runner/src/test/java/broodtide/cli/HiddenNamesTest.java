package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.terminal.Terminal;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Names that hold what cannot be seen, or look like other names, through the whole program. */
class HiddenNamesTest {
  private static final String HEAD = "date,colony,mites,bees\n";

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"\u001b[2J", "\u202e", "\u2028", "\u0085", "\u200b"})
  void areRefusedAndLeaveNothingBehind(String hidden) {
    Path out = folder.resolve("out");
    Trial trial =
        Trial.run(
            HEAD + "2025-06-01,A" + hidden + "B,1,300\n",
            "forecast",
            "-",
            "--climate=boreal",
            "--colonies=64",
            "--out=" + out);
    assertThat(trial.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(trial.err())
        .hasLineCount(1)
        .startsWith("standard input, line 2, column 2, colony: \"A ")
        .doesNotContain(hidden);
    assertThat(out).doesNotExist();
  }

  @ParameterizedTest
  @ValueSource(strings = {"--climate=bo\u001b[31mreal", "--\u001b[31mx", "--seed=\u202e1"})
  void optionsAreShownWithoutThem(String option) {
    Trial trial = Trial.run(HEAD + "2025-06-01,A,1,300\n", "forecast", "-", option);
    assertThat(trial.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(trial.err()).isNotBlank().doesNotContain("\u001b", "\u202e");
  }

  @Test
  void theLineOfProgressShowsBlanks() throws InterruptedException {
    StringWriter err = new StringWriter();
    CommandContext desk =
        new CommandContext(
            InputStream.nullInputStream(),
            new PrintWriter(new StringWriter()),
            new PrintWriter(err),
            new Terminal(80, false, true),
            true,
            Clock.systemUTC());
    try (ProgressLine line =
        new ProgressLine(desk, new RunOptions(), "reading \u001b]0;title\u0007\u202ewashes")) {
      Thread.sleep(1100);
      line.at(1, 2);
    }
    assertThat(err.toString())
        .contains("reading  ]0;title  washes [")
        .doesNotContain("\u001b", "\u0007", "\u202e");
  }

  @Test
  void lookalikesInWashesAndTreatmentsAreTold() throws IOException {
    Path given =
        Files.writeString(
            folder.resolve("given.csv"),
            "date,colony,control\n2025-06-10,Alder,thymol\n2025-06-10,alder,thymol\n");
    Trial trial =
        Trial.run(
            HEAD + "2025-06-01,\u0410lder,1,300\n2025-06-02,Alder,1,300\n",
            "forecast",
            "-",
            "--climate=boreal",
            "--colonies=64",
            "--given=" + given,
            "--out=" + folder.resolve("out"));
    assertThat(trial.code()).as(trial.err()).isZero();
    assertThat(trial.out().replaceAll("\\s+", " "))
        .contains("\"\u0410lder\" (line 2), \"Alder\" (line 3)")
        .contains("CYRILLIC CAPITAL LETTER A")
        .contains("\"Alder\" (line 2 of the treatments), \"alder\" (line 3 of the treatments)")
        .contains("\"alder\" (line 3 of " + given);
  }

  @Test
  void lookalikesInStudiesAreTold() throws IOException {
    assertThat(Trial.run("", "study", "new", folder.resolve("s").toString()).code()).isZero();
    Path washes = folder.resolve("s/washes.csv");
    Files.writeString(washes, Files.readString(washes).replace("Larkmeadow", "Larkme\u0430dow"));
    Trial trial =
        Trial.run(
            "",
            "forecast",
            "--study=" + folder.resolve("s/study.json"),
            "--colonies=64",
            "--out=" + folder.resolve("out"));
    assertThat(trial.out() + trial.err())
        .contains("\"Larkmeadow 2\" (the study)")
        .contains("\"Larkme\u0430dow 2\" (line 3 of washes.csv)")
        .contains("U+0430");
  }
}
