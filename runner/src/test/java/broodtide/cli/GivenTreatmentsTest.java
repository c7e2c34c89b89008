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
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Treatments already given, as the command line takes them. */
class GivenTreatmentsTest {
  @TempDir private Path folder = Path.of("");
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String command, String given) throws IOException {
    Path washes = Files.writeString(folder.resolve("washes.csv"), WASHES);
    Path treatments = Files.writeString(folder.resolve("given.csv"), given);
    CommandContext desk =
        new CommandContext(
            InputStream.nullInputStream(),
            new PrintWriter(out),
            new PrintWriter(err),
            new Terminal(100, false, false),
            false,
            Clock.fixed(Instant.parse("2025-12-31T00:00:00Z"), ZoneOffset.UTC));
    int code =
        Main.run(
            desk,
            command,
            washes.toString(),
            "--climate=temperate",
            "--given=" + treatments,
            "--colonies=256",
            "--quiet",
            "--out=" + folder.resolve("out"));
    desk.out().flush();
    desk.err().flush();
    return code;
  }

  private static final String WASHES =
      """
      date,colony,mites,bees
      2025-06-01,North,8,300
      2025-07-15,North,7,310
      2025-08-10,North,9,300
      """;

  @Test
  void theirSuccessIsLearned() throws IOException {
    assertThat(run("forecast", "date,colony,control\n2025-06-05,North,thymol\n")).isZero();
    assertThat(out.toString()).contains("of 5 June 2025 worked");
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void beforeTheFirstWashAndAfterTheLast() throws IOException {
    String given = "date,colony,control\n2025-04-02,,thymol\n2025-09-20,North,oxalic-vapour\n";
    assertThat(run("forecast", given)).isZero();
    assertThat(out.toString().replaceAll("\\s+", " "))
        .contains("of 2 April 2025 worked")
        .contains("of 20 September 2025 worked");
  }

  @Test
  void backtestTakesThem() throws IOException {
    assertThat(run("backtest", "date,colony,control\n2025-05-20,North,split\n")).isZero();
    assertThat(out.toString()).contains("1 forecast:");
  }

  @Test
  void strangersAndFaultsAreSaid() throws IOException {
    assertThat(run("forecast", "date,colony,control\n2025-06-05,Nort,thymol\n")).isZero();
    assertThat(out.toString()).contains("did you mean \"North\"?");
    assertThat(run("forecast", "date,colony,control\n2025-06-05,North,thyme\n")).isEqualTo(2);
    assertThat(err.toString()).contains("did you mean \"thymol\"?");
  }
}
