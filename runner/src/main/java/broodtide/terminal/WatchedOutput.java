package broodtide.terminal;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;
import java.util.Optional;

/** An output that remembers why it could not be written; print writers swallow that. */
public final class WatchedOutput extends FilterOutputStream {
  private Optional<String> lost = Optional.empty();

  public WatchedOutput(OutputStream out) {
    super(out);
  }

  @Override
  public void write(int b) throws IOException {
    write(new byte[] {(byte) b}, 0, 1);
  }

  @Override
  public void write(byte[] bytes, int from, int length) throws IOException {
    try {
      out.write(bytes, from, length);
    } catch (IOException e) {
      String why = String.valueOf(e.getMessage());
      // A reader such as "head" that has read enough is no fault of anybody's.
      if (lost.isEmpty() && !why.toLowerCase(Locale.ROOT).contains("pipe")) {
        lost = Optional.of(why);
      }
      throw e;
    }
  }

  /** Why something is missing since this was last asked, unless nobody wanted to read on. */
  public Optional<String> takeLoss() {
    Optional<String> taken = lost;
    lost = Optional.empty();
    return taken;
  }
}
