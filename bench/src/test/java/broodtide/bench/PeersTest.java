package broodtide.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The peer in C runs the daily engine's season, and says so when it does not. */
class PeersTest {
  private static final Path DAILY = Path.of("peers", "daily.c");

  @TempDir Path work;

  /** What a program printed, and how it ended. */
  private record Ended(int code, String printed) {}

  private Ended run(String... command) throws IOException, InterruptedException {
    Path printed = work.resolve("printed.txt");
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(printed.toFile())
            .start();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).as("%s ends", command[0]).isTrue();
    return new Ended(process.exitValue(), Files.readString(printed));
  }

  private String compiled(int width) throws IOException, InterruptedException {
    boolean gcc;
    try {
      gcc = run("gcc", "--version").code() == 0;
    } catch (IOException e) {
      gcc = false;
    }
    assumeTrue(gcc, "no gcc here, so the peer in C is not checked");
    String program = work.resolve("daily").toString();
    Ended compiler =
        run("gcc", "-O2", "-DW=" + width, "-o", program, DAILY.toAbsolutePath().toString(), "-lm");
    assertThat(compiler.code()).as(compiler.printed()).isZero();
    return program;
  }

  private Path season() throws IOException {
    Path file = work.resolve("season.txt");
    BenchSeason.main(new String[] {file.toString()});
    return file;
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 64})
  void everyColonyEndsAsInTheDailyEngine(int width) throws IOException, InterruptedException {
    Ended peer = run(compiled(width), season().toString(), "1");
    assertThat(peer.code()).as(peer.printed()).isZero();
    double largest = Double.parseDouble(peer.printed().trim().split(" ")[1]);
    assertThat(largest).isLessThan(1e-9);
  }

  @Test
  void aPeerThatDiffersIsNotTimed() throws IOException, InterruptedException {
    Path file = season();
    List<String> lines = new ArrayList<>(Files.readAllLines(file));
    lines.replaceAll(line -> line.startsWith("rate overtDeath ") ? "rate overtDeath 2.05" : line);
    Files.write(file, lines);
    Ended peer = run(compiled(1), file.toString(), "1");
    assertThat(peer.code()).isEqualTo(3);
    assertThat(peer.printed()).contains("differs from the project");
  }
}
