package broodtide.cli;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** A file that the user named. */
final class UserFile {
  private UserFile() {}

  /** What is done with the bytes of a file. */
  @FunctionalInterface
  interface Read<T> {
    T read(InputStream in) throws IOException;
  }

  /**
   * Opens a file and reads it.
   *
   * @param name its name as the user gave it
   * @param what what it is, for messages, like "the table of washes"
   * @throws BadInput when there is no such file, or it cannot be read
   */
  static <T> T read(String name, String what, Read<T> read) {
    if (name.isBlank()) {
      throw new Refusal("the name of " + what + " is blank; give that of a file");
    }
    try {
      Path path = Path.of(name);
      if (Files.isDirectory(path)) {
        throw refused(name, "is a folder; give the file itself");
      }
      try (InputStream in = Files.newInputStream(path)) {
        return read.read(in);
      }
    } catch (InvalidPathException e) {
      throw new Refusal(unusable(name));
    } catch (IOException e) {
      throw cannotRead(name, e);
    }
  }

  /** The fault of a file that could not be read. */
  static BadInput cannotRead(String name, IOException e) {
    return refused(
        name,
        e instanceof NoSuchFileException
            ? "there is no such file"
            : e instanceof AccessDeniedException
                ? "may not be read; let its owner allow it, or copy it to a folder of yours"
                : "cannot be read: " + e.getMessage());
  }

  /** Why a name is none that this system can use: most often letters that its locale lacks. */
  static String unusable(String name) {
    return "'"
        + name
        + "' cannot be the name of a file here; if it has accents or other letters, run with a"
        + " locale of UTF-8, for instance LC_ALL=C.UTF-8";
  }

  private static BadInput refused(String name, String why) {
    return BadInput.of(Fault.of(name, why));
  }
}
