package broodtide.report;

import broodtide.chart.Markup;
import broodtide.chart.Picture;
import broodtide.chart.Size;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Writes HTML of which every text and every attribute is escaped; the one thing let through as it
 * is is a {@link Picture}, which escapes for itself. What is written is well-formed XML too. The
 * same calls give the same bytes.
 */
final class HtmlWriter {
  private static final Set<String> EMPTY = Set.of("meta", "hr", "br");
  private static final Set<String> INLINE =
      Set.of("b", "strong", "small", "span", "bdi", "a", "code", "em");

  private static final Pattern STYLE = Pattern.compile("<style\\b.*?</style>", Pattern.DOTALL);

  private final StringBuilder out = new StringBuilder(4096);
  private final Deque<String> open = new ArrayDeque<>();

  /** A piece of a page, to be put into a document with {@link #append}. */
  static HtmlWriter piece() {
    return new HtmlWriter();
  }

  /** Begins a document in this language. */
  static HtmlWriter document(String language) {
    HtmlWriter html = new HtmlWriter();
    html.out.append("<!DOCTYPE html>\n");
    return html.open("html", "lang", language);
  }

  private HtmlWriter() {}

  /**
   * Opens an element.
   *
   * @param attributes names and values in turn
   */
  HtmlWriter open(String tag, String... attributes) {
    out.append('<').append(tag);
    for (int i = 0; i < attributes.length; i += 2) {
      out.append(' ').append(attributes[i]).append("=\"");
      out.append(Markup.escape(attributes[i + 1])).append('"');
    }
    if (EMPTY.contains(tag)) {
      out.append(" />\n");
    } else {
      out.append('>');
      open.push(tag);
    }
    return this;
  }

  /** Writes text. */
  public HtmlWriter text(String text) {
    out.append(Markup.escape(text));
    return this;
  }

  /** Writes a text that a user gave, which may run the other way than the text around it. */
  HtmlWriter given(String text) {
    return open("bdi").text(text).close();
  }

  /** Closes the element opened last. */
  HtmlWriter close() {
    String tag = open.pop();
    out.append("</").append(tag).append('>');
    if (!INLINE.contains(tag)) {
      out.append('\n');
    }
    return this;
  }

  /** A whole element of text. */
  HtmlWriter element(String tag, String text, String... attributes) {
    return open(tag, attributes).text(text).close();
  }

  /** A finished piece. */
  HtmlWriter append(HtmlWriter piece) {
    out.append(piece.out);
    return this;
  }

  /** A picture as inline SVG. */
  HtmlWriter picture(Picture picture) {
    out.append(picture.svg());
    return this;
  }

  /** A picture as it suits a wide screen and a phone, with its caption, if it has one. */
  HtmlWriter figure(Picture picture, Size phone, String caption) {
    open("figure");
    open("div", "class", "wide").picture(picture).close();
    open("div", "class", "narrow").picture(picture.sized(phone)).close();
    return caption.isEmpty() ? close() : element("figcaption", caption).close();
  }

  /**
   * A style sheet.
   *
   * @throws IllegalArgumentException when it would end its own element
   */
  HtmlWriter style(String css) {
    if (css.contains("</")) {
      throw new IllegalArgumentException("a style sheet may not hold \"</\"");
    }
    out.append("<style>\n").append(css).append("</style>\n");
    return this;
  }

  /** What a reader sees of what has been written: no markup, no style. */
  String words() {
    return STYLE.matcher(out).replaceAll(" ").replaceAll("<[^>]*>", " ");
  }

  /** The document; everything still open is closed. */
  String finish() {
    while (!open.isEmpty()) {
      close();
    }
    return out.toString();
  }
}
