package broodtide.cli;

import broodtide.engine.Progress;
import broodtide.terminal.Terminal;
import java.io.PrintWriter;

/**
 * A line of progress on standard error, drawn only at a terminal and only once the work has taken a
 * second.
 */
final class ProgressLine implements Progress, AutoCloseable {
  private static final long PATIENCE = 1_000_000_000L;
  private static final long BETWEEN = 100_000_000L;
  private static final int WIDTH = 24;

  private final PrintWriter err;
  private final boolean drawn;
  private final String what;
  private final long began = System.nanoTime();
  private long last;
  private boolean shown;

  ProgressLine(CommandContext desk, RunOptions run, String what) {
    err = desk.err();
    drawn = desk.live() && !run.quiet;
    this.what = Terminal.clean(what);
  }

  @Override
  public synchronized void at(int done, int all) {
    long now = System.nanoTime();
    if (!drawn || now - began < PATIENCE || now - last < BETWEEN) {
      return;
    }
    last = now;
    shown = true;
    int full = Math.min(WIDTH, (int) ((long) WIDTH * done / Math.max(1, all)));
    err.print(
        "\r"
            + what
            + " ["
            + "#".repeat(full)
            + " ".repeat(WIDTH - full)
            + "] "
            + 100L * done / Math.max(1, all)
            + " %");
    err.flush();
  }

  /** Clears the line. */
  @Override
  public synchronized void close() {
    if (shown) {
      err.print("\r" + " ".repeat(what.length() + WIDTH + 10) + "\r");
      err.flush();
    }
  }
}
