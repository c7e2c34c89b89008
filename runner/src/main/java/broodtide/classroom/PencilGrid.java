package broodtide.classroom;

import broodtide.web.Html;
import java.util.Locale;

/** An empty picture of a worksheet, ruled and lettered, on which learners draw with a pencil. */
final class PencilGrid {
  private final StringBuilder out = new StringBuilder();

  /**
   * Nothing ruled yet.
   *
   * @param caption what is drawn and its unit
   * @param classes classes of the picture, for its style
   * @param label what the picture is, for who cannot see it
   */
  PencilGrid(String caption, String classes, String label, int width, int height) {
    out.append("<figure><figcaption>")
        .append(Html.text(caption))
        .append("</figcaption><svg class=\"" + classes + "\" role=\"img\" aria-label=\"")
        .append(Html.text(label))
        .append("\" viewBox=\"0 0 " + width + " " + height + "\">");
  }

  void line(double x1, double y1, double x2, double y2) {
    append("<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\"/>", x1, y1, x2, y2);
  }

  void text(double x, double y, String anchor, String text) {
    append(
        "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\">%s</text>", x, y, anchor, Html.text(text));
  }

  void point(double x, double y) {
    append("<circle cx=\"%.1f\" cy=\"%.1f\" r=\"6\"/>", x, y);
  }

  private void append(String format, Object... of) {
    out.append(String.format(Locale.ROOT, format, of));
  }

  /** The picture with its caption. */
  String figure() {
    return out + "</svg></figure>";
  }
}
