package broodtide.cli;

import broodtide.engine.Progress;
import broodtide.words.Digits;
import java.io.PrintWriter;
import java.util.Locale;

/**
 * How many hives of a long run are done, how fast, and how long the rest will take: one line on
 * standard error, drawn only at a terminal.
 */
final class HiveProgress implements Progress, AutoCloseable {
  private static final double BILLION = 1e9;
  private static final double BETWEEN = 0.25;
  private static final int MINUTE = 60;
  private static final int HOUR = 3600;

  private final PrintWriter err;
  private final boolean drawn;
  private final int before;
  private final long began = System.nanoTime();
  private double last;
  private int width;

  /**
   * @param before hives that an earlier run had done
   */
  HiveProgress(CommandContext desk, RunOptions run, int before) {
    err = desk.err();
    drawn = desk.live() && !run.quiet;
    this.before = before;
  }

  @Override
  public synchronized void at(int done, int all) {
    double seconds = (System.nanoTime() - began) / BILLION;
    if (!drawn || seconds - last < BETWEEN) {
      return;
    }
    last = seconds;
    String text = text(before, done, all, seconds);
    err.print("\r" + text + " ".repeat(Math.max(0, width - text.length())));
    err.flush();
    width = text.length();
  }

  /**
   * {@return the line}
   *
   * @param before hives that an earlier run had done
   * @param done hives done by this one
   * @param all hives that this one has to do
   * @param seconds how long it has worked, above 0
   */
  static String text(int before, int done, int all, double seconds) {
    double rate = done / seconds;
    return (before + done)
        + " of "
        + Digits.counted(before + all, "hive")
        + String.format(Locale.ROOT, rate < 10 ? ", %.1f a second" : ", %.0f a second", rate)
        + (done == 0 ? "" : ", about " + left((all - done) / rate) + " left");
  }

  private static String left(double seconds) {
    if (seconds < MINUTE) {
      return Math.round(seconds) + " s";
    }
    return seconds < HOUR
        ? Math.round(seconds / MINUTE) + " min"
        : String.format(Locale.ROOT, "%.1f h", seconds / HOUR);
  }

  /** Clears the line. */
  @Override
  public synchronized void close() {
    if (width > 0) {
      err.print("\r" + " ".repeat(width) + "\r");
      err.flush();
    }
  }
}
