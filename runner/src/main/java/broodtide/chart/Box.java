package broodtide.chart;

/**
 * A rectangle, in picture units (CSS pixels), y downwards.
 *
 * @param x left edge
 * @param y top edge
 * @param width width
 * @param height height
 */
record Box(double x, double y, double width, double height) {
  double right() {
    return x + width;
  }

  double bottom() {
    return y + height;
  }

  boolean overlaps(Box other) {
    return x < other.right() && other.x < right() && y < other.bottom() && other.y < bottom();
  }

  boolean holds(double px, double py) {
    return px >= x && px <= right() && py >= y && py <= bottom();
  }
}
