package broodtide.web;

import java.util.Collection;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * A piece of HTML. Text becomes one only through {@link #text}, so that nothing gets into a page
 * unescaped by oversight.
 *
 * @param markup the markup
 */
public record Html(String markup) {
  static final Html NONE = new Html("");

  /** Plain text, escaped for element content and for quoted attributes. */
  static Html text(String plain) {
    StringBuilder out = new StringBuilder(plain.length() + 16);
    for (int i = 0; i < plain.length(); i++) {
      char c = plain.charAt(i);
      switch (c) {
        case '&' -> out.append("&amp;");
        case '<' -> out.append("&lt;");
        case '>' -> out.append("&gt;");
        case '"' -> out.append("&quot;");
        case '\'' -> out.append("&#39;");
        default -> out.append(c);
      }
    }
    return new Html(out.toString());
  }

  /** Several pieces behind one another. */
  static <T> Html each(Collection<T> items, Function<T, Html> piece) {
    return new Html(items.stream().map(piece).map(Html::markup).collect(Collectors.joining("\n")));
  }

  /** A list of plain texts. */
  static Html list(Collection<String> items) {
    return each(items, item -> new Html("<li>" + text(item) + "</li>"));
  }

  @Override
  public String toString() {
    return markup;
  }
}
