package broodtide.cli;

import broodtide.study.Library;
import java.util.Iterator;

/** The shipped climates, for help and completion. */
final class ClimateNames implements Iterable<String> {
  @Override
  public Iterator<String> iterator() {
    return Library.names(Library.Shelf.CLIMATES).iterator();
  }
}
