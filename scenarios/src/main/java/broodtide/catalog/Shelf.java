package broodtide.catalog;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.forms.Nearest;
import broodtide.forms.Source;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/**
 * One kind of file that ships with the project, and the way to a user's own: wherever a name is
 * expected, a path that holds a {@code /} or ends in {@code .json} leads to a file.
 *
 * <p>A shelf may be shared by threads. What ships with the project cannot change while a program
 * runs and is read once; a user's own file is read anew at each call.
 *
 * @param <T> what a file holds; immutable
 */
public final class Shelf<T> {
  private final String folder;
  private final Function<Source, T> reader;
  private final String others;
  private final Map<String, String> renamed;
  private final Map<String, T> shipped = new ConcurrentHashMap<>();

  /**
   * A shelf.
   *
   * @param folder name of its folder in the library
   * @param reader reads one file
   */
  public Shelf(String folder, Function<Source, T> reader) {
    this(folder, reader, "", Map.of());
  }

  /**
   * A shelf whose names are not all that may be given.
   *
   * @param folder name of its folder in the library
   * @param reader reads one file
   * @param others what else its callers take, as a message names it; empty when nothing
   * @param renamed names of today by those of earlier versions
   */
  Shelf(String folder, Function<Source, T> reader, String others, Map<String, String> renamed) {
    this.folder = folder;
    this.reader = reader;
    this.others = others;
    this.renamed = Map.copyOf(renamed);
  }

  /** {@return the name of its folder in the library} */
  public String folder() {
    return folder;
  }

  /** {@return names of what stands on the shelf, in alphabetical order} */
  public List<String> names() {
    return files().stream()
        .filter(file -> file.endsWith(".json"))
        .map(file -> file.substring(0, file.length() - ".json".length()))
        .sorted()
        .toList();
  }

  /** {@return all files of the shelf as its index lists them, since a jar cannot be listed} */
  public List<String> files() {
    Source index = new Source.Shipped(folder, "index.txt");
    return index.exists() ? index.text().lines().toList() : List.of();
  }

  /**
   * {@return what a name or a path means; paths start at the working directory}
   *
   * @param nameOrPath a name of the shelf, or the path of a file of that kind
   * @throws BadInput when there is none, or the file is faulty
   */
  public T get(String nameOrPath) {
    return read(find(nameOrPath));
  }

  /**
   * {@return what a file of this kind holds}
   *
   * @param file the file
   * @throws BadInput when it is faulty
   */
  public T read(Source file) {
    return file instanceof Source.Shipped
        ? shipped.computeIfAbsent(file.name(), name -> reader.apply(file))
        : reader.apply(file);
  }

  /**
   * {@return the file that a name or a path means; paths start at the working directory}
   *
   * @param nameOrPath a name of the shelf, or the path of a file of that kind
   * @throws BadInput when there is none of that name
   */
  public Source find(String nameOrPath) {
    return find(nameOrPath, Source.here());
  }

  /**
   * {@return the file that a name or a path means}
   *
   * @param nameOrPath a name of the shelf, or the path of a file of that kind
   * @param from the file beside which paths start
   * @throws BadInput when there is none of that name
   */
  public Source find(String nameOrPath, Source from) {
    if (isPath(nameOrPath)) {
      return own(folder, nameOrPath, from);
    }
    if (!names().contains(nameOrPath)) {
      throw noSuch(nameOrPath);
    }
    return new Source.Shipped(folder, nameOrPath + ".json");
  }

  /**
   * {@return whether a text leads to a file rather than naming something of the library}
   *
   * @param nameOrPath what a user wrote
   */
  public static boolean isPath(String nameOrPath) {
    return nameOrPath.contains("/") || nameOrPath.endsWith(".json");
  }

  /**
   * {@return a file of the user's}
   *
   * @param what what it is, for the message
   * @param path its path
   * @param from the file beside which paths start
   * @throws BadInput when it is not there
   */
  public static Source own(String what, String path, Source from) {
    Source file = from.beside(path);
    if (!file.exists()) {
      String why =
          file instanceof Source.OnDisk disk && Files.isDirectory(disk.path())
              ? "it is a folder; give the file itself"
              : "there is no such file " + file.name();
      throw BadInput.of(new Fault(what, 0, 0, "", path, why));
    }
    return file;
  }

  private BadInput noSuch(String name) {
    String today = renamed.get(name);
    if (today != null) {
      String message = "it is called " + today + " now; write " + today;
      return BadInput.of(new Fault(folder, 0, 0, "", name, message));
    }
    List<String> known = names();
    String message =
        "known are "
            + String.join(", ", known)
            + "; or give the path of a file of your own, ending in .json"
            + (others.isEmpty() ? "" : ", or " + others)
            + Nearest.hint(name, known);
    return BadInput.of(new Fault(folder, 0, 0, "", name, message));
  }
}
