package broodtide.chart;

import java.util.List;

/**
 * What stands above a picture.
 *
 * @param title a sentence that says what the picture shows
 * @param subtitle what is drawn, for whom and when; may be empty
 */
public record Heading(String title, String subtitle) {
  static final double MARGIN = 16;

  private static final double TOP = MARGIN - 4;
  private static final double BETWEEN = 2;
  private static final double LEADING = 1.28;
  private static final double NARROW_TITLE = 17.5;

  public Heading {
    if (title.isBlank()) {
      throw new IllegalArgumentException(
          "a picture needs a title: one sentence that says what it shows");
    }
  }

  /** Height used, counted from the upper edge. */
  double height(Size size) {
    double titled = wrapped(title, titleType(size), size).size() * LEADING * titleType(size).size();
    int rows = wrapped(subtitle, Type.SUBTITLE, size).size();
    return TOP + titled + BETWEEN + rows * LEADING * Type.SUBTITLE.size();
  }

  /** Paints the heading and returns its height. */
  double paint(Canvas canvas, Size size) {
    canvas.open("heading", "");
    double y = paragraph(canvas, title, titleType(size), TOP, size);
    paragraph(canvas, subtitle, Type.SUBTITLE, y + BETWEEN, size);
    canvas.close();
    return height(size);
  }

  private static double paragraph(Canvas canvas, String text, Type type, double top, Size size) {
    double y = top;
    for (String line : wrapped(text, type, size)) {
      y += LEADING * type.size();
      canvas.write(line, MARGIN, y - 0.2 * type.size(), type);
    }
    return y;
  }

  private static List<String> wrapped(String text, Type type, Size size) {
    return Lettering.wrap(text, type, size.width() - 2 * MARGIN);
  }

  private static Type titleType(Size size) {
    return size.narrow() ? Type.TITLE.sized(NARROW_TITLE) : Type.TITLE;
  }
}
