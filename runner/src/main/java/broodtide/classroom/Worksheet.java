package broodtide.classroom;

import broodtide.chart.Almanac;
import broodtide.chart.ColonyChart;
import broodtide.chart.Estimate;
import broodtide.chart.Heading;
import broodtide.chart.Line;
import broodtide.chart.Marker;
import broodtide.chart.Panel;
import broodtide.chart.PriorPosterior;
import broodtide.chart.Size;
import broodtide.lesson.Lesson;
import broodtide.web.Html;
import broodtide.web.PageFrame;
import broodtide.web.Template;
import broodtide.words.Digits;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** A lesson to print: one sheet for learners, and the answers on a sheet of their own. */
final class Worksheet {
  private static final long SEED = 1;

  private Worksheet() {}

  /** The page. */
  static Html of(Lesson lesson, LessonPlay play) {
    List<JudgedHive> hives =
        IntStream.range(0, lesson.judged().size()).mapToObj(play::judged).toList();
    Html main =
        Template.named("worksheet.html")
            .fill(
                Map.ofEntries(
                    Map.entry("name", Html.text(lesson.name())),
                    Map.entry("title", Html.text(lesson.title())),
                    Map.entry("story", Html.text(lesson.story())),
                    Map.entry("question", Html.text(lesson.question())),
                    Map.entry("caution", LessonPage.caution(lesson, "")),
                    Map.entry("space", space(lesson, play)),
                    Map.entry("scale", EfficacyScale.of(lesson.judged())),
                    Map.entry(
                        "discussion",
                        Html.list(lesson.discussion().stream().map(Lesson.Topic::ask).toList())),
                    Map.entry("answer", answer(lesson, play)),
                    Map.entry("reveal", Html.text(lesson.reveal())),
                    Map.entry("figures", figures(play)),
                    Map.entry("charts", new Html(chart(lesson, play).svg())),
                    Map.entry("judged", judged(hives)),
                    Map.entry("verdicts", verdicts(lesson, hives)),
                    Map.entry("records", LessonPage.records(lesson)),
                    Map.entry("evening", LessonPage.evening(lesson)),
                    Map.entry("answers", answers(lesson)),
                    Map.entry("teacher", Html.text(lesson.teacher())),
                    Map.entry("sources", Html.list(lesson.sources()))));
    return PageFrame.page(
        "Worksheet: " + lesson.title(),
        "/lessons",
        List.of("lesson.css", "print.css"),
        List.of("page.js"),
        main);
  }

  /** Where learners write or draw. */
  private static Html space(Lesson lesson, LessonPlay play) {
    if (lesson.task() instanceof Lesson.Draw draw) {
      return BlankGrid.of(draw, play.drawn(draw, draw.days().get(0)));
    }
    if (lesson.task() instanceof Lesson.Choose choose) {
      return new Html(
          "<ul class=\"boxes\">"
              + Html.list(choose.choices().stream().map(Lesson.Choice::text).toList())
              + "</ul><p class=\"write\">Because:</p>");
    }
    Lesson.Washes task = (Lesson.Washes) lesson.task();
    return new Html(
        "<p class=\"write\">Lowest count I expect:</p><p class=\"write\">Highest count I"
            + " expect:</p><p>The counts of the class:</p><div class=\"cells\">"
            + "<span></span>".repeat(task.washes())
            + "</div>");
  }

  private static Html answer(Lesson lesson, LessonPlay play) {
    if (lesson.task() instanceof Lesson.Choose choose) {
      Lesson.Choice right = choose.right();
      return paragraph(right.text() + ". " + right.because());
    }
    if (lesson.task() instanceof Lesson.Washes task) {
      SampleDraw draw = play.washes(task, SEED);
      List<String> counts = new ArrayList<>();
      for (int count : draw.counts()) {
        counts.add(Integer.toString(count));
      }
      return paragraph(
          "For example, drawn with seed "
              + SEED
              + ": "
              + String.join(", ", counts)
              + ". Lowest "
              + draw.lowest()
              + ", highest "
              + draw.highest()
              + ". The 90 % interval is "
              + draw.low()
              + " and "
              + draw.high()
              + ".");
    }
    Lesson.Draw draw = (Lesson.Draw) lesson.task();
    return paragraph(
        draw.days().stream()
            .map(day -> Sentences.day(day) + ": " + Digits.two(play.drawn(draw, day)))
            .collect(Collectors.joining(". ", "", ".")));
  }

  private static Html paragraph(String text) {
    return new Html("<p class=\"lead\">" + Html.text(text) + "</p>");
  }

  /** Every question with what a teacher can say. */
  private static Html answers(Lesson lesson) {
    return Html.each(
        lesson.discussion(),
        topic ->
            new Html(
                "<dt>"
                    + Html.text(topic.ask())
                    + "</dt><dd>"
                    + Html.text(topic.answer())
                    + "</dd>"));
  }

  /** The efficacy of each hive whose washes judge a treatment, as the reveal shows it. */
  private static Html judged(List<JudgedHive> hives) {
    if (hives.isEmpty()) {
      return new Html("");
    }
    String picture =
        PriorPosterior.of(
                new Heading("What the washes say of the efficacy", "As the reveal shows it"),
                hives.stream().map(JudgedHive::efficacy).toList())
            .sized(new Size(720, 100 + 120 * ((hives.size() + 1) / 2)))
            .svg();
    return new Html("<div class=\"efficacy\">" + picture + "</div>");
  }

  /** What is said of each of these hives. */
  private static Html verdicts(Lesson lesson, List<JudgedHive> hives) {
    if (hives.isEmpty()) {
      return new Html("");
    }
    return new Html(
        "<h2>What the washes say</h2>"
            + Html.each(
                IntStream.range(0, hives.size()).boxed().toList(),
                i ->
                    new Html(
                        "<p><strong>Hive "
                            + Html.text(lesson.judged().get(i).hive())
                            + ":</strong> "
                            + Html.text(hives.get(i).words())
                            + "</p>")));
  }

  private static Html figures(LessonPlay play) {
    return Html.each(
        play.readings(),
        r ->
            new Html(
                "<tr><th scope=\"row\">"
                    + Html.text(r.say())
                    + "</th><td>"
                    + Html.text(r.value())
                    + "</td></tr>"));
  }

  private static ColonyChart chart(Lesson lesson, LessonPlay play) {
    List<Panel> panels =
        lesson.charts().stream()
            .map(c -> Panel.of(c.title(), play.curves(c).stream().map(Worksheet::line).toList()))
            .toList();
    Almanac almanac = Almanac.BLANK;
    for (ControlMark mark : ControlMark.of(lesson)) {
      almanac = almanac.with(new Marker(mark.label(), mark.on()));
    }
    return new ColonyChart(
        new Heading(lesson.title(), "As the model plays it"),
        panels,
        almanac,
        new Size(720, 120 + 190 * panels.size()));
  }

  private static Line line(LessonPlay.QuantityCurve curve) {
    List<Estimate> days = new ArrayList<>();
    LocalDate day = curve.start();
    for (double value : curve.values()) {
      days.add(Estimate.of(day, value));
      day = day.plusDays(1);
    }
    return new Line(curve.name(), "", days);
  }
}
