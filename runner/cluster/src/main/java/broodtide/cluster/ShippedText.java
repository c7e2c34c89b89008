package broodtide.cluster;

import broodtide.catalog.Shelf;
import broodtide.forms.Source;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * A name of the library or a file of the user's, whose text goes along to machines that do not have
 * the file.
 *
 * @param name the name or the path
 * @param text the text of a file; null for a name of the library
 */
record ShippedText(String name, @Nullable String text) implements Serializable {
  static ShippedText of(String nameOrPath, Shelf<?> shelf) {
    return new ShippedText(
        nameOrPath, Shelf.isPath(nameOrPath) ? shelf.find(nameOrPath).text() : null);
  }

  /** What it says. */
  <T> T read(Shelf<T> shelf) {
    return text == null ? shelf.get(name) : shelf.read(Source.of(name, text));
  }
}
