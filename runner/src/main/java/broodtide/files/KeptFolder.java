package broodtide.files;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.StringJoiner;

/**
 * A few files of the user's own in one folder, which are saved together and never half. Of each
 * file that is replaced the last version stays beside it, see {@link #before}.
 *
 * <p>Whoever saves says which version was read. Where the files are others by now, nothing is
 * written.
 */
public final class KeptFolder {
  private final Path folder;
  private final List<String> names;

  /**
   * What the folder holds.
   *
   * @param version stands for all names and contents
   * @param files content by name, of the files that are there
   */
  public record Contents(String version, Map<String, byte[]> files) {
    /**
     * {@return a file; empty when there is none of the name}
     *
     * @param name its name
     */
    public Optional<byte[]> find(String name) {
      return Optional.ofNullable(files.get(name));
    }
  }

  private KeptFolder(Path folder, List<String> names) {
    this.folder = folder;
    this.names = List.copyOf(names);
  }

  /**
   * {@return files of a folder, which need not be there yet}
   *
   * @param folder the folder
   * @param names plain names of the files
   */
  public static KeptFolder of(Path folder, List<String> names) {
    return new KeptFolder(folder, names);
  }

  /** {@return the folder} */
  public Path folder() {
    return folder;
  }

  /**
   * {@return the name under which the last version of a file is kept: {@code washes.before.csv}}
   *
   * @param name name of a file
   */
  public static String before(String name) {
    int dot = name.lastIndexOf('.');
    return dot < 0 ? name + ".before" : name.substring(0, dot) + ".before" + name.substring(dot);
  }

  /**
   * {@return what the folder holds now} What a save that died had finished is put in place first.
   *
   * @throws OutputRefused when a file cannot be read
   */
  public Contents read() {
    try {
      if (Files.isDirectory(folder) && Files.isWritable(folder)) {
        try (Generation generation = Generation.in(folder)) {
          return held();
        }
      }
      return held();
    } catch (IOException e) {
      throw OutputRefused.unsaved(folder, Outputs.reason(e), e);
    }
  }

  /**
   * Saves files.
   *
   * @param version the version that was read
   * @param changes new content by name; empty where the file is to go
   * @return what the folder holds then
   * @throws FolderChanged when the folder holds another version; nothing is written
   * @throws OutputRefused when the files cannot be written
   */
  public Contents save(String version, Map<String, Optional<byte[]>> changes) {
    if (!names.containsAll(changes.keySet())) {
      throw new IllegalArgumentException("files are " + changes.keySet() + "; known are " + names);
    }
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new OutputRefused(folder, "a file of this name is in the way", null);
    }
    try (Generation generation = Generation.in(folder)) {
      Contents now = held();
      if (!now.version().equals(version)) {
        throw new FolderChanged(folder);
      }
      Map<String, byte[]> next = new LinkedHashMap<>();
      Map<String, byte[]> old = new LinkedHashMap<>();
      for (Map.Entry<String, Optional<byte[]>> change : changes.entrySet()) {
        String name = change.getKey();
        Optional<byte[]> was = now.find(name);
        if (same(was, change.getValue())) {
          continue;
        }
        change.getValue().ifPresent(content -> next.put(name, content));
        if (was.isPresent()) {
          old.put(name, was.get());
          Path kept = folder.resolve(before(name));
          if (Files.isRegularFile(kept)) {
            old.put(before(name), Files.readAllBytes(kept));
          }
          next.put(before(name), was.get());
        }
      }
      if (next.isEmpty()) {
        return now;
      }
      generation.save(next, old);
      Contents saved = held();
      for (Map.Entry<String, Optional<byte[]>> change : changes.entrySet()) {
        if (!same(saved.find(change.getKey()), change.getValue())) {
          throw new FolderChanged(folder);
        }
      }
      return saved;
    } catch (IOException e) {
      throw OutputRefused.unsaved(folder, Outputs.reason(e), e);
    }
  }

  private static boolean same(Optional<byte[]> a, Optional<byte[]> b) {
    return a.isPresent() == b.isPresent()
        && (a.isEmpty() || Manifest.Sum.of(a.get()).equals(Manifest.Sum.of(b.get())));
  }

  private Contents held() throws IOException {
    Map<String, byte[]> files = new LinkedHashMap<>();
    StringJoiner all = new StringJoiner("\n");
    for (String name : names) {
      Path file = folder.resolve(name);
      if (Files.exists(file)) {
        byte[] content = Files.readAllBytes(file);
        files.put(name, content);
        all.add(name + " " + Manifest.Sum.of(content).sha256());
      }
    }
    byte[] listed = all.toString().getBytes(StandardCharsets.UTF_8);
    return new Contents(Manifest.Sum.of(listed).sha256().substring(0, 32), files);
  }
}
