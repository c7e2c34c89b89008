package broodtide.chart;

/**
 * How a line is drawn.
 *
 * @param colour its colour
 * @param width its width in picture units
 * @param dash lengths of dashes and gaps, separated by blanks; empty for an unbroken line
 */
record Pen(Colour colour, double width, String dash) {
  /** A threshold or another level to be judged against. */
  static final Pen THRESHOLD = new Pen(Palette.INK, 1.6, "5 4");

  /** Neither gained nor lost. */
  static final Pen ZERO = solid(Palette.INK, 1.4);

  static Pen solid(Colour colour, double width) {
    return new Pen(colour, width, "");
  }
}
