package broodtide.study;

import broodtide.catalog.Shelf;
import broodtide.forms.BadInput;

/** The shelf of worked studies. */
public final class Studies {
  /** The shelf. */
  public static final Shelf<Study> SHELF = new Shelf<>("studies", StudyFile::read);

  private Studies() {}

  /**
   * {@return a study by name or path}
   *
   * @param nameOrPath a shipped name, or the path of a study
   * @throws BadInput when there is none, or the file is faulty
   */
  public static Study named(String nameOrPath) {
    return SHELF.get(nameOrPath);
  }
}
