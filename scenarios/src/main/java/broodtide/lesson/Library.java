package broodtide.lesson;

import broodtide.catalog.ClimateFile;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.ControlTemplateFile;
import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.forms.Nearest;
import broodtide.forms.Source;
import broodtide.season.Climate;
import broodtide.study.Study;
import broodtide.study.StudyFile;
import java.nio.file.Files;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * The shipped climates, controls, studies and lessons, and the way to a user's own: wherever a name
 * is expected, a path that holds a {@code /} or ends in {@code .json} leads to a file.
 */
public final class Library {
  /** A folder of the library. */
  public enum Shelf {
    /** Climates. */
    CLIMATES,
    /** Controls with their usual values. */
    CONTROLS,
    /** Worked studies. */
    STUDIES,
    /** Lessons of the class page. */
    LESSONS;

    /** {@return the folder's name} */
    public String folder() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private Library() {}

  /**
   * {@return names of what stands on a shelf, in the order of the alphabet}
   *
   * @param shelf the shelf
   */
  public static List<String> names(Shelf shelf) {
    return files(shelf).stream()
        .filter(file -> file.endsWith(".json"))
        .map(file -> file.substring(0, file.length() - ".json".length()))
        .sorted()
        .toList();
  }

  /**
   * All files of a shelf, as its index lists them. A jar cannot be listed, so there is an index.
   */
  static List<String> files(Shelf shelf) {
    Source index = new Source.Shipped(shelf.folder(), "index.txt");
    return index.exists() ? index.text().lines().toList() : List.of();
  }

  /**
   * {@return a climate by name or path}
   *
   * @param nameOrPath a name of the shelf, or the path of a file of that kind
   * @throws BadInput when there is none, or the file is faulty
   */
  public static Climate climate(String nameOrPath) {
    return ClimateFile.read(find(Shelf.CLIMATES, nameOrPath));
  }

  /**
   * {@return a control with its usual values by name or path}
   *
   * @param nameOrPath a name of the shelf, or the path of a file of that kind
   * @throws BadInput when there is none, or the file is faulty
   */
  public static ControlTemplate control(String nameOrPath) {
    return ControlTemplateFile.read(find(Shelf.CONTROLS, nameOrPath));
  }

  /**
   * {@return a study by name or path}
   *
   * @param nameOrPath a name of the shelf, or the path of a file of that kind
   * @throws BadInput when there is none, or the file is faulty
   */
  public static Study study(String nameOrPath) {
    return StudyFile.read(find(Shelf.STUDIES, nameOrPath));
  }

  /**
   * {@return a lesson by name or path}
   *
   * @param nameOrPath a name of the shelf, or the path of a file of that kind
   * @throws BadInput when there is none, or the file is faulty
   */
  public static Lesson lesson(String nameOrPath) {
    return LessonFile.read(find(Shelf.LESSONS, nameOrPath));
  }

  /** {@return the shipped lessons in the order of their numbers} */
  public static List<Lesson> lessons() {
    return names(Shelf.LESSONS).stream()
        .map(Library::lesson)
        .sorted(Comparator.comparingInt(Lesson::number))
        .toList();
  }

  /**
   * {@return the file that a name or a path means; paths start at the working directory}
   *
   * @param shelf the shelf
   * @param nameOrPath a name of the shelf, or the path of a file of that kind
   * @throws BadInput when there is none of that name
   */
  public static Source find(Shelf shelf, String nameOrPath) {
    return find(shelf, nameOrPath, Source.here());
  }

  /** The same with paths that start beside a file. */
  static Source find(Shelf shelf, String nameOrPath, Source from) {
    if (isPath(nameOrPath)) {
      return own(shelf.folder(), nameOrPath, from);
    }
    if (!names(shelf).contains(nameOrPath)) {
      throw noSuch(shelf, nameOrPath);
    }
    return new Source.Shipped(shelf.folder(), nameOrPath + ".json");
  }

  /** Whether a text leads to a file rather than naming something of the library. */
  static boolean isPath(String nameOrPath) {
    return nameOrPath.contains("/") || nameOrPath.endsWith(".json");
  }

  /** A file of the user's, which must be there. */
  static Source own(String what, String path, Source from) {
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

  private static BadInput noSuch(Shelf shelf, String name) {
    List<String> known = names(shelf);
    String message =
        "known are "
            + String.join(", ", known)
            + "; or give the path of a file of your own, ending in .json"
            + Nearest.hint(name, known);
    return BadInput.of(new Fault(shelf.folder(), 0, 0, "", name, message));
  }
}
