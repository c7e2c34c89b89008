package broodtide.classroom;

import broodtide.engine.Quantity;
import broodtide.lesson.Lesson;
import broodtide.lesson.LessonRun;
import broodtide.words.Digits;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;

/** A lesson with its seasons played: everything that the reveal shows. */
final class LessonPlay {
  private final Lesson lesson;
  private final LessonRun run;
  private final Map<String, Season> seasons = new LinkedHashMap<>();
  private final Map<Integer, JudgedHive> judged = new ConcurrentHashMap<>();

  LessonPlay(Lesson lesson, SeasonPlayer player) {
    this.lesson = lesson;
    run = LessonRun.of(lesson);
    for (Lesson.Line line : lesson.lines()) {
      seasons.put(line.name(), player.play(line.scenario(), line.setting().member()));
    }
  }

  /**
   * A line of a chart.
   *
   * @param name written at its end
   * @param start its first day
   * @param values one per day
   */
  record QuantityCurve(String name, LocalDate start, double[] values) {}

  /**
   * A number with what it is.
   *
   * @param say what it is
   * @param value the number, for people
   */
  record Reading(String say, String value) {}

  /** The season of a plan. */
  Season season(String plan) {
    Season season = seasons.get(plan);
    if (season == null) {
      throw new IllegalArgumentException("no plan " + plan);
    }
    return season;
  }

  /** The lines of one chart. */
  List<QuantityCurve> curves(Lesson.Chart chart) {
    List<QuantityCurve> out = new ArrayList<>();
    seasons.forEach(
        (plan, season) -> {
          for (Quantity q : chart.show()) {
            String name = seasons.size() > 1 ? plan : q.label();
            out.add(new QuantityCurve(name, season.start(), season.of(q)));
          }
        });
    return out;
  }

  /** The numbers read out. */
  List<Reading> readings() {
    return lesson.figures().stream().map(f -> new Reading(f.say(), value(f))).toList();
  }

  private String value(Lesson.Figure figure) {
    if (figure.measure() instanceof Lesson.OnDay day) {
      Season season = season(day.plan());
      if (season.at(day.show(), day.on()).isEmpty()) {
        return season.lost().isPresent() ? "the colony is lost" : "not shown";
      }
    }
    OptionalDouble value = run.value(figure.measure());
    if (value.isEmpty()) {
      return "not shown";
    }
    return share(figure.measure())
        ? Digits.percent(value.getAsDouble())
        : Digits.two(value.getAsDouble());
  }

  private static boolean share(Lesson.Measure measure) {
    if (measure instanceof Lesson.OnDay day) {
      return day.of().isPresent() || day.show().unit().equals("1");
    }
    return measure instanceof Lesson.Result result && result.result().share();
  }

  /** What the words claim and the figures of this place do not show. */
  List<String> broken() {
    return run.broken().stream().map(Lesson.Claim::say).toList();
  }

  /** What the washes of a hive say of its treatment, by its place from 0; worked out once. */
  JudgedHive judged(int place) {
    return judged.computeIfAbsent(
        place,
        at -> {
          Lesson.Judged hive = lesson.judged().get(at);
          return JudgedHive.of(hive, lesson.line(hive.plan()));
        });
  }

  /** Washes of the lesson's colony on its day. */
  SampleDraw washes(Lesson.Washes task, long seed) {
    double infestation = season(task.plan()).at(Quantity.INFESTATION, task.on()).orElse(0.0);
    double found = infestation * task.method().recovery().mean();
    return SampleDraw.of(Math.min(100, found), task.bees(), task.washes(), seed);
  }

  /** The value on a day of the curve that learners draw. */
  double drawn(Lesson.Draw task, LocalDate day) {
    return season(task.plan()).at(task.show(), day).orElse(0.0);
  }

  /** All of the reveal as the page's script reads it. */
  ObjectNode json() {
    ObjectNode out = SeasonJson.object();
    out.put("reveal", lesson.reveal());
    ArrayNode charts = out.putArray("charts");
    for (Lesson.Chart chart : lesson.charts()) {
      ObjectNode c = charts.addObject().put("title", chart.title());
      ArrayNode lines = c.putArray("lines");
      for (QuantityCurve curve : curves(chart)) {
        lines
            .addObject()
            .put("name", curve.name())
            .put("start", curve.start().toString())
            .set("values", SeasonJson.values(curve.values()));
      }
    }
    ArrayNode hives = out.putArray("judged");
    lesson.judged().forEach(hive -> hives.add(hive.hive()));
    out.set("marks", SeasonJson.marks(ControlMark.of(lesson)));
    ArrayNode figures = out.putArray("figures");
    readings().forEach(r -> figures.addObject().put("say", r.say()).put("value", r.value()));
    answer(out);
    return out;
  }

  private void answer(ObjectNode out) {
    if (lesson.task() instanceof Lesson.Choose choose) {
      ArrayNode choices = out.putArray("choices");
      choose
          .choices()
          .forEach(
              c ->
                  choices
                      .addObject()
                      .put("text", c.text())
                      .put("right", c.right())
                      .put("because", c.because()));
    } else if (lesson.task() instanceof Lesson.Draw draw) {
      Season season = season(draw.plan());
      ObjectNode drawn = out.putObject("drawn");
      drawn.put("start", season.start().toString());
      drawn.set("values", SeasonJson.values(season.of(draw.show())));
      ArrayNode points = drawn.putArray("points");
      draw.days()
          .forEach(
              d ->
                  points
                      .addObject()
                      .put("day", d.toString())
                      .put("value", SeasonJson.number(drawn(draw, d))));
    }
  }

  /** Washes as the page's script reads them. */
  static ObjectNode json(SampleDraw draw, long seed) {
    ObjectNode out = SeasonJson.object();
    out.put("seed", seed);
    ArrayNode counts = out.putArray("counts");
    for (int count : draw.counts()) {
      counts.add(count);
    }
    out.put("low", draw.low()).put("high", draw.high());
    out.set("theory", SeasonJson.values(draw.theory()));
    return out;
  }
}
