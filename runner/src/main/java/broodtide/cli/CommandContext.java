package broodtide.cli;

import broodtide.terminal.Terminal;
import java.io.InputStream;
import java.io.PrintWriter;
import java.time.Clock;
import java.util.Optional;

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
record CommandContext(
    InputStream in,
    PrintWriter out,
    PrintWriter err,
    Terminal terminal,
    boolean live,
    Clock clock) {
  /** The desk of a program run from a shell. */
  static CommandContext here(PrintWriter out, PrintWriter err) {
    boolean live = Boolean.parseBoolean(System.getProperty("broodtide.live", "false"));
    return new CommandContext(
        StandardInput.here(), out, err, Terminal.here(), live, Clock.systemDefaultZone());
  }

  /**
   * Makes sure that the answer is out before anything is written that would have to be undone.
   *
   * @throws Refusal when it was lost on the way
   */
  void deliver() {
    Optional<String> loss = loss();
    if (loss.isPresent()) {
      throw new Refusal(
          "cannot write to standard output: "
              + loss.get()
              + "; free the disk, or send the output elsewhere");
    }
  }

  /** Adds what is said of files once they are written; they stay even if it is lost. */
  void add(String text) {
    out.println(text);
    loss()
        .ifPresent(
            why -> err.println("The files are written, but not this (" + why + "): " + text));
  }

  private Optional<String> loss() {
    out.flush();
    return out instanceof AnswerWriter answer ? answer.loss() : Optional.empty();
  }
}
