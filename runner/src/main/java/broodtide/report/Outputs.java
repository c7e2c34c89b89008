package broodtide.report;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.text.Normalizer;
import java.util.LinkedHashMap;
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
   * Opens a folder, making it if need be, and makes sure that files can be written there, so that a
   * long run does not fail at its end.
   *
   * @param folder the folder, made if it is not there
   * @return the folder, ready to be written to
   * @throws OutputRefused when that is not so
   */
  public static Outputs into(Path folder) {
    try {
      if (Files.exists(folder) && !Files.isDirectory(folder)) {
        throw new OutputRefused(folder, "a file of this name is in the way", null);
      }
      Files.createDirectories(folder);
      Path trial = beside(folder.resolve("trial"));
      Files.write(trial, new byte[0], StandardOpenOption.CREATE_NEW);
      Files.delete(trial);
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
   * written.
   *
   * @param files content by name; a name is that of a plain file, see {@link #name}
   * @throws OutputRefused when one cannot be written; files not yet in place are taken away again
   */
  public void write(Map<String, byte[]> files) {
    Map<Path, Path> parts = new LinkedHashMap<>();
    Path current = folder;
    try {
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        current = place(file.getKey());
        Path part = beside(current);
        parts.put(part, current);
        fill(part, file.getValue());
      }
      for (Map.Entry<Path, Path> part : parts.entrySet()) {
        current = part.getValue();
        move(part.getKey(), current);
      }
    } catch (IOException e) {
      throw new OutputRefused(current, reason(e), e);
    } finally {
      parts.keySet().forEach(Outputs::remove);
    }
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

  /** A name no other run uses at the same time. */
  private static Path beside(Path place) {
    String name =
        "."
            + place.getFileName()
            + "."
            + ProcessHandle.current().pid()
            + "."
            + Thread.currentThread().getId()
            + ".part";
    return place.resolveSibling(name);
  }

  private static void fill(Path part, byte[] content) throws IOException {
    try (FileChannel channel =
        FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      ByteBuffer rest = ByteBuffer.wrap(content);
      while (rest.hasRemaining()) {
        channel.write(rest);
      }
      // Otherwise a power cut soon after could leave the name with nothing behind it.
      channel.force(true);
    }
  }

  private static void move(Path part, Path place) throws IOException {
    if (Files.isDirectory(place)) {
      throw new FileSystemException(place.toString(), null, "a folder of this name is in the way");
    }
    try {
      Files.move(part, place, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(part, place, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static void remove(Path part) {
    try {
      Files.deleteIfExists(part);
    } catch (IOException e) {
      // A left-over part is hidden and harmless; what matters has been reported already.
      part.toFile().deleteOnExit();
    }
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
