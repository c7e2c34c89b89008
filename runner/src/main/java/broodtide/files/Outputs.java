package broodtide.files;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.Locale;
import java.util.Map;

/**
 * A folder that results are written to. A file is there whole or not at all: it is written under
 * another name in the same folder and then moved into place.
 */
public final class Outputs {
  private final Path folder;

  private Outputs(Path folder) {
    this.folder = folder;
  }

  /**
   * Chooses a folder and makes sure that files can be written there, so that a long run does not
   * fail at its end. A folder that is not there yet is made when files are written.
   *
   * @param folder the folder, made if it is not there
   * @return the folder, ready to be written to
   * @throws OutputRefused when that is not so
   */
  public static Outputs into(Path folder) {
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new OutputRefused(folder, "a file of this name is in the way", null);
    }
    try (Parts trial = Parts.in(folder)) {
      trial.fill(folder.resolve("trial"), new byte[] {'?'});
    } catch (IOException e) {
      throw new OutputRefused(folder, reason(e), e);
    }
    return new Outputs(folder);
  }

  /** {@return the folder} */
  public Path folder() {
    return folder;
  }

  /**
   * Writes text as UTF-8; see {@link #write(Map)}.
   *
   * @param name file name without folders
   * @param text what to write
   * @return the path of the file
   */
  public Path write(String name, String text) {
    return write(name, text.getBytes(StandardCharsets.UTF_8));
  }

  /**
   * Writes one file; see {@link #write(Map)}.
   *
   * @param name file name without folders
   * @param content what to write
   * @return the path of the file
   */
  public Path write(String name, byte[] content) {
    write(Map.of(name, content));
    return folder.resolve(name);
  }

  /**
   * Writes files, in place of older ones of the same names. None is moved into place before all are
   * written; when the program is stopped before that, none is there.
   *
   * @param files content by name; a name is that of a plain file, see {@link #name}
   * @throws OutputRefused when one cannot be written; nothing is left then but what was there
   *     before
   */
  public void write(Map<String, byte[]> files) {
    Path current = folder;
    try (Parts parts = Parts.in(folder)) {
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        current = place(file.getKey());
        parts.fill(current, file.getValue());
      }
      current = folder;
      parts.place();
    } catch (IOException e) {
      throw new OutputRefused(faulty(e, current), reason(e), e);
    }
  }

  /** What could not be written: the place that a part was to be moved to, or the file at hand. */
  private static Path faulty(IOException e, Path current) {
    return e instanceof FileSystemException f && f.getOtherFile() != null
        ? current.getFileSystem().getPath(f.getOtherFile())
        : current;
  }

  private Path place(String name) {
    if (name.isBlank()
        || name.startsWith(".")
        || !folder.getFileSystem().getPath(name).getFileName().toString().equals(name)) {
      throw new IllegalArgumentException(
          "file name is '" + name + "'; give a plain name without folders, for instance chart.svg");
    }
    return folder.resolve(name);
  }

  private static String reason(IOException e) {
    String text = e instanceof FileSystemException f ? f.getReason() : e.getMessage();
    if (text != null && !text.isBlank()) {
      return text;
    }
    String kind = e.getClass().getSimpleName().replace("Exception", "");
    return kind.replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
  }

  /**
   * A plain file name made from any words: {@code Hive 7/left} gives {@code hive-7-left}.
   *
   * @param words any text, for example the name of a colony
   * @return letters a to z, digits and single hyphens; {@code unnamed} when nothing is left
   */
  public static String name(String words) {
    String plain = Normalizer.normalize(words, Normalizer.Form.NFD).replaceAll("\\p{M}", "");
    String name =
        plain.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
    return name.isEmpty() ? "unnamed" : name;
  }
}
