package broodtide.classroom;

import broodtide.lesson.Lesson;
import broodtide.web.Html;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** An empty grid on which learners draw with a pencil; the first point is given. */
final class BlankGrid {
  private static final int WIDTH = 720;
  private static final int HEIGHT = 380;
  private static final int LEFT = 56;
  private static final int RIGHT = 16;
  private static final int TOP = 16;
  private static final int FOOT = 34;
  private static final int ROWS = 4;

  private final StringBuilder out = new StringBuilder();
  private final Lesson.Draw draw;

  private BlankGrid(Lesson.Draw draw) {
    this.draw = draw;
  }

  /**
   * The grid as a picture.
   *
   * @param draw what is to be drawn
   * @param given the value on the first day
   */
  static Html of(Lesson.Draw draw, double given) {
    return new Html(new BlankGrid(draw).svg(given));
  }

  private String svg(double given) {
    out.append("<figure><figcaption>")
        .append(Html.text(draw.show().label() + ", " + draw.show().unit()))
        .append("</figcaption><svg class=\"grid\" role=\"img\" aria-label=\"An empty grid to draw")
        .append(" on\" viewBox=\"0 0 " + WIDTH + " " + HEIGHT + "\">");
    for (int row = 0; row <= ROWS; row++) {
      double value = draw.top() * row / ROWS;
      line(LEFT, y(value), WIDTH - RIGHT, y(value));
      text(LEFT - 8, y(value) + 5, "end", SeasonJson.number(value).toPlainString());
    }
    for (LocalDate day : draw.days()) {
      line(x(day), TOP, x(day), HEIGHT - FOOT);
      boolean last = day.equals(draw.days().get(draw.days().size() - 1));
      text(x(day), HEIGHT - 12, last ? "end" : "middle", Sentences.brief(day));
    }
    out.append(
        String.format(
            Locale.ROOT,
            "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"6\"/>",
            x(draw.days().get(0)),
            y(given)));
    return out.append("</svg></figure>").toString();
  }

  private double x(LocalDate day) {
    LocalDate first = draw.days().get(0);
    LocalDate last = draw.days().get(draw.days().size() - 1);
    double share =
        (double) ChronoUnit.DAYS.between(first, day) / ChronoUnit.DAYS.between(first, last);
    return LEFT + share * (WIDTH - LEFT - RIGHT);
  }

  private double y(double value) {
    return HEIGHT - FOOT - value / draw.top() * (HEIGHT - FOOT - TOP);
  }

  private void line(double x1, double y1, double x2, double y2) {
    out.append(
        String.format(
            Locale.ROOT,
            "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\"/>",
            x1,
            y1,
            x2,
            y2));
  }

  private void text(double x, double y, String anchor, String text) {
    out.append(
        String.format(
            Locale.ROOT,
            "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\">%s</text>",
            x,
            y,
            anchor,
            Html.text(text)));
  }
}
