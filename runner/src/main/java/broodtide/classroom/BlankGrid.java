package broodtide.classroom;

import broodtide.lesson.Lesson;
import broodtide.web.Html;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/** An empty grid on which learners draw with a pencil; the first point is given. */
final class BlankGrid {
  private static final int WIDTH = 720;
  private static final int HEIGHT = 380;
  private static final int LEFT = 56;
  private static final int RIGHT = 16;
  private static final int TOP = 16;
  private static final int FOOT = 34;
  private static final int ROWS = 4;

  private final Lesson.Draw draw;
  private final PencilGrid grid;

  private BlankGrid(Lesson.Draw draw) {
    this.draw = draw;
    this.grid =
        new PencilGrid(
            draw.show().label() + ", " + draw.show().unit(),
            "grid",
            "An empty grid to draw on",
            WIDTH,
            HEIGHT);
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
    for (int row = 0; row <= ROWS; row++) {
      double value = draw.top() * row / ROWS;
      grid.line(LEFT, y(value), WIDTH - RIGHT, y(value));
      grid.text(LEFT - 8, y(value) + 5, "end", SeasonJson.number(value).toPlainString());
    }
    for (LocalDate day : draw.days()) {
      grid.line(x(day), TOP, x(day), HEIGHT - FOOT);
      boolean last = day.equals(draw.days().get(draw.days().size() - 1));
      grid.text(x(day), HEIGHT - 12, last ? "end" : "middle", Sentences.brief(day));
    }
    grid.point(x(draw.days().get(0)), y(given));
    return grid.figure();
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
}
