package broodtide.report;

import broodtide.measure.RefusedException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** A result could not be written. The message names the file or folder, the reason and a remedy. */
public final class OutputRefused extends RefusedException {
  private static final long serialVersionUID = 1L;

  OutputRefused(Path path, String reason, @Nullable Throwable cause) {
    super(
        "cannot write "
            + path
            + ": "
            + reason
            + "; choose a folder you may write to (--out DIR), or free the name or the disk",
        cause);
  }
}
