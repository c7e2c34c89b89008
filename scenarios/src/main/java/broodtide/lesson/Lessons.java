package broodtide.lesson;

import broodtide.catalog.Shelf;
import broodtide.forms.BadInput;
import java.util.Comparator;
import java.util.List;

/** The shelf of lessons for a class. */
public final class Lessons {
  /** The shelf. */
  public static final Shelf<Lesson> SHELF = new Shelf<>("lessons", LessonFile::read);

  private Lessons() {}

  /**
   * {@return a lesson by name or path}
   *
   * @param nameOrPath a shipped name, or the path of a lesson
   * @throws BadInput when there is none, or the file is faulty
   */
  public static Lesson named(String nameOrPath) {
    return SHELF.get(nameOrPath);
  }

  /** {@return the shipped lessons in the order of their numbers} */
  public static List<Lesson> all() {
    return SHELF.names().stream()
        .map(Lessons::named)
        .sorted(Comparator.comparingInt(Lesson::number))
        .toList();
  }
}
