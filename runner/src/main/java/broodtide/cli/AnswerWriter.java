package broodtide.cli;

import broodtide.terminal.WatchedOutput;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Standard output, which knows what of an answer was lost. */
final class AnswerWriter extends PrintWriter {
  private final WatchedOutput watched;

  AnswerWriter(OutputStream out) {
    this(new WatchedOutput(out));
  }

  private AnswerWriter(WatchedOutput watched) {
    super(watched, false, StandardCharsets.UTF_8);
    this.watched = watched;
  }

  /** Why something is missing since this was last asked, unless nobody wanted to read on. */
  Optional<String> loss() {
    flush();
    return watched.takeLoss();
  }
}
