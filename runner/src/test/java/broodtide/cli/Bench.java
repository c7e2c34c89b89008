package broodtide.cli;

import broodtide.terminal.Terminal;
import java.io.ByteArrayInputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;

/** Runs the program in the test's own JVM, with a fixed day and no terminal. */
final class Bench {
  private static final Clock LATE_2026 =
      Clock.fixed(Instant.parse("2026-12-31T12:00:00Z"), ZoneOffset.UTC);

  private Bench() {}

  /**
   * What came of a run.
   *
   * @param code exit code
   * @param out standard output
   * @param err standard error
   */
  record Outcome(int code, String out, String err) {}

  static Outcome run(String... args) {
    return fed("", args);
  }

  static Outcome fed(String input, String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandContext desk =
        new CommandContext(
            new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)),
            new PrintWriter(out),
            new PrintWriter(err),
            new Terminal(80, false, true),
            false,
            LATE_2026);
    int code = Main.run(desk, args);
    return new Outcome(code, out.toString(), err.toString());
  }
}
