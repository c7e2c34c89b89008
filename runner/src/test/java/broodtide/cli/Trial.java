package broodtide.cli;

import broodtide.terminal.Terminal;
import java.io.ByteArrayInputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;

/**
 * One run of the whole program.
 *
 * @param code exit code
 * @param out what it printed
 * @param err what it complained of
 */
record Trial(int code, String out, String err) {
  /** Runs the program late in 2025 with a text on standard input. */
  static Trial run(String input, String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandContext desk =
        new CommandContext(
            new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)),
            new PrintWriter(out),
            new PrintWriter(err),
            new Terminal(80, false, true),
            false,
            Clock.fixed(Instant.parse("2025-12-01T12:00:00Z"), ZoneOffset.UTC));
    return new Trial(Main.run(desk, args), out.toString(), err.toString());
  }
}
