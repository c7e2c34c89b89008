package broodtide.files;

import broodtide.measure.RefusedException;
import java.nio.file.Path;

/** The files of a folder are not those that somebody began to change. Nothing was written. */
public final class FolderChanged extends RefusedException {
  private static final long serialVersionUID = 1L;

  /**
   * @param folder the folder
   */
  FolderChanged(Path folder) {
    super(
        "the files in "
            + folder
            + " were changed by another page or program since this page read them; nothing was"
            + " written. Load them again, or keep what you typed and save it elsewhere");
  }
}
