package broodtide.files;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * A folder that the results of one run are written to. They appear together, in place of those of
 * the last run of the same command, and replace nothing else; {@link broodtide.files} says how.
 */
public final class Outputs {
  /** What a file holds. */
  @FunctionalInterface
  public interface Content {
    /**
     * Writes it all.
     *
     * @param out takes it; not to be closed
     * @throws IOException when it cannot be read or written
     */
    void to(OutputStream out) throws IOException;
  }

  /** The results of a run as JSON. */
  public static final String RESULTS = "results.json";

  private final Path folder;
  private final String command;
  private final List<Path> inputs;

  private Outputs(Path folder, String command, Collection<Path> inputs) {
    this.folder = folder;
    this.command = command;
    this.inputs = List.copyOf(inputs);
  }

  /**
   * Chooses a folder and makes sure, before any work is done, that results can be written there. A
   * folder that is not there yet is made when they are.
   *
   * @param folder the folder
   * @param command the command whose results these are
   * @param inputs files that the run reads, which it must not replace
   * @param names files that it may write, by plain name
   * @return the folder, ready to be written to
   * @throws OutputRefused when it cannot be written to, belongs to another command, or holds a file
   *     of such a name that is an input, was not written by this program or was changed since
   */
  public static Outputs into(
      Path folder, String command, Collection<Path> inputs, Collection<String> names) {
    Outputs outputs = new Outputs(folder, command, inputs);
    outputs.locked(generation -> outputs.check(names));
    return outputs;
  }

  /**
   * Chooses a folder for files that are the user's from then on: none of them is replaced or taken
   * away by a later run.
   *
   * @param folder the folder
   * @param names files to write, by plain name
   * @return the folder, ready to be written to
   * @throws OutputRefused when it cannot be written to, or one of the files is there
   */
  public static Outputs handedOver(Path folder, Collection<String> names) {
    return into(folder, "", List.of(), names);
  }

  /** {@return the folder} */
  public Path folder() {
    return folder;
  }

  /**
   * Writes all results of the run.
   *
   * @param files content by plain name, see {@link #name}
   * @throws OutputRefused when one cannot be written; nothing is changed then
   */
  public void write(Map<String, byte[]> files) {
    Map<String, Content> contents = new LinkedHashMap<>();
    files.forEach((name, bytes) -> contents.put(name, out -> out.write(bytes)));
    writeAll(contents);
  }

  /**
   * Writes all results of the run, of which some may be too large to be held in memory.
   *
   * @param files content by plain name, see {@link #name}
   * @throws OutputRefused when one cannot be written; nothing is changed then
   */
  public void writeAll(Map<String, Content> files) {
    for (String name : files.keySet()) {
      if (!isPlain(name)) {
        throw new IllegalArgumentException(
            "file name is '" + name + "'; give a plain name without folders, like chart.svg");
      }
    }
    locked(
        generation -> {
          check(files.keySet());
          generation.replace(command, files);
        });
  }

  /**
   * Writes text as UTF-8; see {@link #write(Map)}.
   *
   * @param name the only file of the run
   * @param text what to write
   */
  public void write(String name, String text) {
    write(Map.of(name, text.getBytes(StandardCharsets.UTF_8)));
  }

  private void check(Collection<String> names) throws IOException {
    Claims.checkInputs(folder, inputs, names);
    Claims.checkInputs(folder, inputs, List.of(Manifest.NAME));
    Manifest last = Manifest.in(folder);
    Claims.checkInputs(folder, inputs, last.files().keySet());
    Claims.checkOwner(folder, command, last);
    Manifest ours = command.isEmpty() ? new Manifest("", new TreeMap<>()) : last;
    Claims.check(folder, names, ours, ours);
  }

  @FunctionalInterface
  private interface Step {
    void in(Generation generation) throws IOException;
  }

  private void locked(Step step) {
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new OutputRefused(folder, "a file of this name is in the way", null);
    }
    try (Generation generation = Generation.in(folder)) {
      step.in(generation);
    } catch (IOException e) {
      throw new OutputRefused(folder, reason(e), e);
    }
  }

  /** Why the system refused, in a few words. */
  static String reason(IOException e) {
    String text = e instanceof FileSystemException f ? f.getReason() : e.getMessage();
    if (text != null && !text.isBlank()) {
      return text;
    }
    String kind = e.getClass().getSimpleName().replace("Exception", "");
    return kind.replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
  }

  /** Whether a name is that of a file in the folder itself and not hidden. */
  static boolean isPlain(String name) {
    return !name.isBlank()
        && !name.startsWith(".")
        && name.chars().noneMatch(c -> c == '/' || c == '\\' || c == 0)
        && !name.equals(Manifest.NAME);
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
