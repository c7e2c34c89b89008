package broodtide.classroom;

import broodtide.lesson.Lesson;
import broodtide.web.Html;
import broodtide.web.PageFrame;
import broodtide.web.Template;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;

/** The row of lessons, and a lesson: the story, the learner's own guess, then the reveal. */
final class LessonPage {
  private static final List<String> STYLES = List.of("chart.css", "lesson.css");

  private static final String LIST = "/lessons";

  private static final int MOST_HANDS = 5;

  private LessonPage() {}

  /** The row of lessons. */
  static Html list(List<Lesson> lessons) {
    Html items =
        Html.each(
            lessons,
            l ->
                new Html(
                    "<li><a class=\"lesson-link\" href=\"/lessons/"
                        + l.name()
                        + "\">"
                        + Html.text(l.title())
                        + "</a><p>"
                        + Html.text(l.question())
                        + "</p><span class=\"aside\">"
                        + minutes(l)
                        + " minutes. </span><a class=\"aside\" href=\"/lessons/"
                        + l.name()
                        + "/worksheet\">Worksheet to print<span class=\"unseen\">: "
                        + Html.text(l.title())
                        + "</span></a></li>"));
    return PageFrame.page(
        "Lessons",
        LIST,
        STYLES,
        List.of("lessons.js"),
        Template.named("lessons.html").fill(Map.of("items", items)));
  }

  /** One lesson. */
  static Html of(Lesson lesson, LessonPlay play, List<Lesson> all) {
    int at = all.indexOf(lesson);
    boolean last = at + 1 == all.size();
    String before = at > 0 ? "/lessons/" + all.get(at - 1).name() + "#talk" : LIST;
    String after = last ? LIST : "/lessons/" + all.get(at + 1).name();
    Html next =
        last
            ? link("/explore", "Now play with a colony of your own")
            : link(after, "Next lesson: " + all.get(at + 1).title());
    Html main =
        Template.named("lesson.html")
            .fill(
                Map.ofEntries(
                    Map.entry("name", Html.text(lesson.name())),
                    Map.entry("number", Html.text(at + 1 + " of " + all.size())),
                    Map.entry("before", Html.text(before)),
                    Map.entry("after", Html.text(after)),
                    Map.entry(
                        "on",
                        Html.text(
                            last
                                ? "Page Down goes back to the list of lessons."
                                : "Page Down goes on to lesson " + (at + 2) + ", Page Up back.")),
                    Map.entry("title", Html.text(lesson.title())),
                    Map.entry("story", Html.text(lesson.story())),
                    Map.entry("caution", caution(lesson, " class=\"mind\"")),
                    Map.entry("question", Html.text(lesson.question())),
                    Map.entry("task", task(lesson, play)),
                    Map.entry(
                        "discussion",
                        Html.list(lesson.discussion().stream().map(Lesson.Topic::ask).toList())),
                    Map.entry("records", records(lesson)),
                    Map.entry("evening", evening(lesson)),
                    Map.entry("doubt", doubt(play)),
                    Map.entry("hands", hands(lesson)),
                    Map.entry(
                        "open", new Html(lesson.task() instanceof Lesson.Choose ? "" : " open")),
                    Map.entry("next", next)));
    return PageFrame.page(lesson.title(), LIST, STYLES, List.of("lesson.js"), main);
  }

  /** The table of the story, nothing where there is none. */
  static Html records(Lesson lesson) {
    if (lesson.records().isEmpty()) {
      return new Html("");
    }
    List<List<String>> rows = lesson.records();
    return new Html(
        "<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"Records\"><table"
            + " class=\"records\"><thead><tr>"
            + Html.each(rows.get(0), c -> cell("th scope=\"col\"", "th", c))
            + "</tr></thead><tbody>"
            + Html.each(
                rows.subList(1, rows.size()),
                row ->
                    new Html(
                        "<tr>"
                            + cell("th scope=\"row\"", "th", row.get(0))
                            + Html.each(row.subList(1, row.size()), c -> cell("td", "td", c))
                            + "</tr>"))
            + "</tbody></table></div>");
  }

  private static Html cell(String open, String close, String text) {
    return new Html("<" + open + ">" + Html.text(text) + "</" + close + ">");
  }

  /** The time plan of the evening. */
  static Html evening(Lesson lesson) {
    return new Html(
        "<p>One evening, "
            + minutes(lesson)
            + " minutes:</p><ol class=\"evening\">"
            + Html.each(
                lesson.evening(),
                e -> new Html("<li>" + e.minutes() + " min: " + Html.text(e.what()) + "</li>"))
            + "</ol>");
  }

  private static int minutes(Lesson lesson) {
    return lesson.evening().stream().mapToInt(Lesson.EveningStep::minutes).sum();
  }

  /** What a teacher must know when another climate does not show what the words say. */
  private static Html doubt(LessonPlay play) {
    if (play.broken().isEmpty()) {
      return new Html("");
    }
    return new Html(
        "<div class=\"mind doubt\"><p><strong>For the teacher:</strong> in this climate the figures"
            + " do not show all that the words say. Leave this lesson out, or choose another"
            + " climate. Not shown:</p><ul>"
            + Html.list(play.broken())
            + "</ul></div>");
  }

  /** What pairs can say by a show of hands, five at most. */
  private static List<String> said(Lesson lesson) {
    if (lesson.task() instanceof Lesson.Choose choose) {
      return choose.choices().stream().map(Lesson.Choice::text).limit(MOST_HANDS).toList();
    }
    if (lesson.task() instanceof Lesson.Draw) {
      return List.of("Rises", "Falls", "Falls, then rises", "Rises, then falls", "Stays level");
    }
    return List.of("0 to 2 apart", "3 to 5 apart", "6 to 8 apart", "9 to 12 apart", "Further");
  }

  private static Html hands(Lesson lesson) {
    List<String> said = said(lesson);
    AtomicInteger number = new AtomicInteger();
    return Html.each(
        said,
        text ->
            new Html(
                "<li><button type=\"button\" class=\"hand\" data-hand=\""
                    + number.incrementAndGet()
                    + "\"><span class=\"key\" aria-hidden=\"true\">"
                    + number.get()
                    + "</span> "
                    + Html.text(text)
                    + ": <output>0</output></button><button type=\"button\" class=\"fewer\""
                    + " data-fewer=\""
                    + number.get()
                    + "\"><span aria-hidden=\"true\">&minus;</span><span class=\"unseen\">One hand"
                    + " fewer: "
                    + Html.text(text)
                    + "</span></button></li>"));
  }

  /** The lesson's caution, nothing where it has none. */
  static Html caution(Lesson lesson, String attributes) {
    return Html.each(
        lesson.caution().stream().toList(),
        c -> new Html("<p" + attributes + "><strong>Note:</strong> " + Html.text(c) + "</p>"));
  }

  private static Html link(String address, String text) {
    return new Html("<a href=\"" + address + "\">" + Html.text(text) + "</a>");
  }

  private static Html task(Lesson lesson, LessonPlay play) {
    Lesson.Task task = lesson.task();
    if (task instanceof Lesson.Draw draw) {
      return draw(draw, play);
    }
    if (task instanceof Lesson.Choose choose) {
      return choose(choose, lesson.question());
    }
    return washes((Lesson.Washes) task, lesson.question());
  }

  private static Html choose(Lesson.Choose choose, String question) {
    AtomicInteger number = new AtomicInteger();
    Html choices =
        Html.each(
            choose.choices(),
            c ->
                new Html(
                    "<label class=\"choice\"><input type=\"radio\" name=\"choice\" value=\""
                        + number.getAndIncrement()
                        + "\"><span>"
                        + Html.text(c.text())
                        + "</span></label>"));
    return Template.named("choose.html")
        .fill(Map.of("question", Html.text(question), "choices", choices));
  }

  private static Html draw(Lesson.Draw draw, LessonPlay play) {
    LocalDate first = draw.days().get(0);
    String given = SeasonJson.brief(play.drawn(draw, first));
    Html points =
        Html.each(
            draw.days(),
            day ->
                new Html(
                    "<label>"
                        + Sentences.day(day)
                        + "<input type=\"number\" inputmode=\"decimal\" min=\"0\" max=\""
                        + SeasonJson.number(draw.top()).toPlainString()
                        + "\" step=\"any\" data-day=\""
                        + day
                        + "\""
                        + (day.equals(first) ? " value=\"" + given + "\" readonly" : "")
                        + "></label>"));
    return Template.named("draw.html")
        .fill(
            Map.of(
                "direction", Html.text(Boolean.toString(draw.direction())),
                "unit", Html.text(draw.show().unit()),
                "top", Html.text(SeasonJson.number(draw.top()).toPlainString()),
                "points", points));
  }

  private static Html washes(Lesson.Washes task, String question) {
    return Template.named("washes.html")
        .fill(
            Map.of(
                "question", Html.text(question),
                "bees", Html.text(Integer.toString(task.bees())),
                "washes", Html.text(Integer.toString(task.washes()))));
  }
}
