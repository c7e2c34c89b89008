package broodtide.classroom;

import broodtide.lesson.Lesson;
import broodtide.web.Html;
import java.util.List;
import java.util.stream.Collectors;

/**
 * An empty scale of efficacy for each hive whose washes judge a treatment: learners mark with a
 * pencil what they believe of it, and how wide they leave it.
 */
final class EfficacyScale {
  private static final int WIDTH = 720;
  private static final int LEFT = 16;
  private static final int RIGHT = 40;
  private static final int WORDS = 24;
  private static final int BOX = 44;
  private static final int GAP = 10;
  private static final int FOOT = 26;
  private static final int STEP = 10;

  private final PencilGrid grid;

  private EfficacyScale(int hives) {
    grid =
        new PencilGrid(
            "Efficacy, % of all mites in the hive",
            "grid efficacy",
            "An empty scale from 0 to 100 % for each hive",
            WIDTH,
            hives * (WORDS + BOX + GAP) + FOOT);
  }

  /** The scales as one picture; nothing where no hive is judged. */
  static Html of(List<Lesson.Judged> hives) {
    return new Html(hives.isEmpty() ? "" : new EfficacyScale(hives.size()).svg(hives));
  }

  private String svg(List<Lesson.Judged> hives) {
    int top = 0;
    for (Lesson.Judged hive : hives) {
      hive(hive, top);
      top += WORDS + BOX + GAP;
    }
    for (int share = 0; share <= 100; share += 2 * STEP) {
      grid.text(x(share), top + 12, "middle", share + (share == 100 ? " %" : ""));
    }
    String question = "<h2>How many of the mites did the treatment kill?</h2>";
    String how =
        "<p>For each hive mark your best guess, and a bar from the lowest to the highest share that"
            + " you think possible.</p>";
    return question + how + grid.figure();
  }

  private void hive(Lesson.Judged hive, int top) {
    String washes =
        hive.washes().stream()
            .map(w -> w.mites() + " in " + w.bees() + " on " + Sentences.day(w.date()))
            .collect(Collectors.joining(", "));
    grid.text(LEFT, top + 16, "start", "Hive " + hive.hive() + ": " + washes);
    int upper = top + WORDS;
    int lower = upper + BOX;
    for (int share = 0; share <= 100; share += STEP) {
      grid.line(x(share), upper, x(share), lower);
    }
    grid.line(x(0), upper, x(100), upper);
    grid.line(x(0), lower, x(100), lower);
  }

  private static double x(int share) {
    return LEFT + share / 100.0 * (WIDTH - LEFT - RIGHT);
  }
}
