package broodtide.chart;

/**
 * How a line is drawn.
 *
 * @param colour its colour
 * @param width its width in picture units
 * @param dash lengths of dashes and gaps, separated by blanks; empty for an unbroken line
 */
record Pen(Colour colour, double width, String dash) {
  static Pen solid(Colour colour, double width) {
    return new Pen(colour, width, "");
  }
}
