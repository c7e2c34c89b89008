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

  private LessonPage() {}

  /** The row of lessons. */
  static Html list(List<Lesson> lessons) {
    Html items =
        Html.each(
            lessons,
            l ->
                new Html(
                    "<li><a href=\"/lessons/"
                        + l.name()
                        + "\">"
                        + Html.text(l.title())
                        + "</a><p>"
                        + Html.text(l.question())
                        + "</p><a class=\"aside\" href=\"/lessons/"
                        + l.name()
                        + "/worksheet\">Worksheet to print<span class=\"unseen\">: "
                        + Html.text(l.title())
                        + "</span></a></li>"));
    return PageFrame.page(
        "Lessons",
        "/lessons",
        STYLES,
        List.of("page.js"),
        Template.named("lessons.html").fill(Map.of("items", items)));
  }

  /** One lesson. */
  static Html of(Lesson lesson, LessonPlay play, List<Lesson> all) {
    int at = all.indexOf(lesson);
    Html next =
        at + 1 < all.size()
            ? link("/lessons/" + all.get(at + 1).name(), "Next lesson: " + all.get(at + 1).title())
            : link("/", "Now play with a colony of your own");
    Html main =
        Template.named("lesson.html")
            .fill(
                Map.ofEntries(
                    Map.entry("name", Html.text(lesson.name())),
                    Map.entry("number", Html.text(lesson.number() + " of " + all.size())),
                    Map.entry("title", Html.text(lesson.title())),
                    Map.entry("story", Html.text(lesson.story())),
                    Map.entry("caution", caution(lesson, " class=\"mind\"")),
                    Map.entry("question", Html.text(lesson.question())),
                    Map.entry("task", task(lesson, play)),
                    Map.entry("discussion", Html.list(lesson.discussion())),
                    Map.entry("teacher", Html.text(lesson.teacher())),
                    Map.entry("sources", Html.list(lesson.sources())),
                    Map.entry("next", next)));
    return PageFrame.page(lesson.title(), "/lessons", STYLES, List.of("lesson.js"), main);
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
