package broodtide.cli;

import broodtide.terminal.Terminal;
import java.io.InputStream;
import java.io.PrintWriter;
import java.time.Clock;

/**
 * What a command works at: where it reads and writes, and what day it is.
 *
 * @param in standard input
 * @param out standard output
 * @param err standard error
 * @param terminal how to set text on standard output
 * @param live whether standard error is a terminal, where progress may be drawn
 * @param clock says what day it is; only future dates are judged by it
 */
public record Desk(
    InputStream in,
    PrintWriter out,
    PrintWriter err,
    Terminal terminal,
    boolean live,
    Clock clock) {
  /** The desk of a program run from a shell. */
  static Desk here(PrintWriter out, PrintWriter err) {
    boolean live = Boolean.parseBoolean(System.getProperty("broodtide.live", "false"));
    return new Desk(System.in, out, err, Terminal.here(), live, Clock.systemDefaultZone());
  }
}
