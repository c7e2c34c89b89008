package broodtide.report;

import java.util.List;

/**
 * What stands above a picture.
 *
 * @param title a sentence that says what the picture shows
 * @param subtitle what is drawn, for whom and when; may be empty
 */
public record Heading(String title, String subtitle) {
  static final double MARGIN = 16;

  public Heading {
    if (title.isBlank()) {
      throw new IllegalArgumentException(
          "a picture needs a title: one sentence that says what it shows");
    }
  }

  /** Paints the heading and returns the height used, counted from the top edge. */
  double paint(Canvas canvas, Size size) {
    double y = MARGIN - 4;
    Type title = size.narrow() ? smaller(Type.TITLE, 17.5) : Type.TITLE;
    canvas.open("heading", "");
    y = paragraph(canvas, this.title, title, y, size);
    y = paragraph(canvas, subtitle, Type.SUBTITLE, y + 2, size);
    canvas.close();
    return y;
  }

  private static double paragraph(Canvas canvas, String text, Type type, double y, Size size) {
    List<String> lines = Lettering.wrap(text, type, size.width() - 2 * MARGIN);
    double below = y;
    for (String line : lines) {
      below += 1.28 * type.size();
      canvas.write(line, MARGIN, below - 0.2 * type.size(), type);
    }
    return below;
  }

  private static Type smaller(Type type, double size) {
    return new Type(size, type.bold(), type.colour(), type.anchor(), type.halo());
  }
}
