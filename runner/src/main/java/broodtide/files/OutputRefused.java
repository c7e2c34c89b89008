package broodtide.files;

import broodtide.measure.RefusedException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** A result may not or cannot be written. The message names the file, the reason and a remedy. */
final class OutputRefused extends RefusedException {
  private static final long serialVersionUID = 1L;

  /** Something stands where the result should go, and is left as it is. */
  OutputRefused(Path path, String why) {
    super(path + " " + why);
  }

  /** The system refuses. */
  OutputRefused(Path path, String reason, @Nullable Throwable cause) {
    super(
        "cannot write "
            + path
            + ": "
            + reason
            + "; choose a folder you may write to (--out DIR), or free the name or the disk",
        cause);
  }

  /** The user's own files cannot be saved. */
  static OutputRefused unsaved(Path folder, String reason, Throwable cause) {
    return new OutputRefused(
        "cannot save in "
            + folder
            + ": "
            + reason
            + "; close programs that have its files open, free the disk, or open another folder",
        cause);
  }

  private OutputRefused(String message, Throwable cause) {
    super(message, cause);
  }
}
