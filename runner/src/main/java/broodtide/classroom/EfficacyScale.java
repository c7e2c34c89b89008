package broodtide.classroom;

import broodtide.lesson.Lesson;
import broodtide.web.Html;
import java.util.List;
import java.util.Locale;
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

  private final StringBuilder out = new StringBuilder();

  private EfficacyScale() {}

  /** The scales as one picture; nothing where no hive is judged. */
  static Html of(List<Lesson.Judged> hives) {
    return new Html(hives.isEmpty() ? "" : new EfficacyScale().svg(hives));
  }

  private String svg(List<Lesson.Judged> hives) {
    int height = hives.size() * (WORDS + BOX + GAP) + FOOT;
    out.append("<h2>How many of the mites did the treatment kill?</h2><p>For each hive mark your")
        .append(" best guess, and a bar from the lowest to the highest share that you think")
        .append(" possible.</p><figure><figcaption>Efficacy, % of all mites in the")
        .append(" hive</figcaption><svg class=\"grid efficacy\" role=\"img\" aria-label=\"An empty")
        .append(" scale from 0 to 100 % for each hive\" viewBox=\"0 0 " + WIDTH + " " + height)
        .append("\">");
    int top = 0;
    for (Lesson.Judged hive : hives) {
      hive(hive, top);
      top += WORDS + BOX + GAP;
    }
    for (int share = 0; share <= 100; share += 2 * STEP) {
      text(x(share), top + 12, "middle", share + (share == 100 ? " %" : ""));
    }
    return out.append("</svg></figure>").toString();
  }

  private void hive(Lesson.Judged hive, int top) {
    String washes =
        hive.washes().stream()
            .map(w -> w.mites() + " in " + w.bees() + " on " + Sentences.day(w.date()))
            .collect(Collectors.joining(", "));
    text(LEFT, top + 16, "start", "Hive " + hive.hive() + ": " + washes);
    int upper = top + WORDS;
    int lower = upper + BOX;
    for (int share = 0; share <= 100; share += STEP) {
      line(x(share), upper, x(share), lower);
    }
    line(x(0), upper, x(100), upper);
    line(x(0), lower, x(100), lower);
  }

  private static double x(int share) {
    return LEFT + share / 100.0 * (WIDTH - LEFT - RIGHT);
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
