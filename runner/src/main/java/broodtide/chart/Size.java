package broodtide.chart;

/**
 * Size of a picture in CSS pixels. An SVG scales to any width; a bitmap has twice as many dots each
 * way.
 *
 * @param width width, 320 to 2000
 * @param height height, 200 to 20000
 */
public record Size(int width, int height) {
  /** For a page or a print. */
  public static final Size PAGE = new Size(720, 460);

  /** For a phone held upright: lines are named in a key above the picture, not beside it. */
  public static final Size PHONE = new Size(400, 480);

  public Size {
    if (width < 320 || width > 2000 || height < 200 || height > 20_000) {
      throw new IllegalArgumentException(
          "picture size is "
              + width
              + " x "
              + height
              + "; expected widths of 320 to 2000 and heights of 200 to 20000");
    }
  }

  /** This size, made higher if need be. */
  Size atLeast(double needed) {
    return needed <= height ? this : new Size(width, (int) Math.ceil(needed));
  }

  /** Whether labels beside the lines would take too much of the width. */
  boolean narrow() {
    return width < 560;
  }
}
