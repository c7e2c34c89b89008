package broodtide.chart;

import java.util.List;

/** What the pictures are painted on: one painting code, an SVG or a bitmap. */
sealed interface Canvas permits SvgCanvas, PixelCanvas {
  /**
   * Opens a group; in an SVG its kind becomes the class name.
   *
   * @param kind what the group shows, one word
   * @param note text shown when the pointer rests on it; empty for none
   */
  void open(String kind, String note);

  /** Closes the group opened last. */
  void close();

  /** Opens a group of which only the part inside the box is seen. */
  void openInside(Box box);

  /** Fills the inside of a closed trace; opacity 0 to 1. */
  void fill(Trace edge, Colour colour, double opacity);

  /** Draws along a trace. */
  default void draw(Trace along, Pen pen) {
    draw(List.of(along), pen);
  }

  /** Draws along many traces with one pen; an SVG names the pen once. */
  void draw(List<Trace> along, Pen pen);

  /** Draws a filled disc with a rim. */
  void disc(double x, double y, double radius, Colour fill, Pen rim);

  /** Writes one line of text with its base line at y. */
  void write(String text, double x, double y, Type type);
}
