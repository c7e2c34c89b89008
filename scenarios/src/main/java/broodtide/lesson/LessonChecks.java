package broodtide.lesson;

import broodtide.control.MiticideCourse;
import broodtide.engine.Scenario;
import broodtide.forms.Nearest;
import broodtide.measure.OutOfRange;
import broodtide.study.Study;
import java.time.LocalDate;
import java.util.List;

/** Checks of a lesson across its fields; the first that fails is refused under its field. */
final class LessonChecks {
  private final Lesson lesson;

  private LessonChecks(Lesson lesson) {
    this.lesson = lesson;
  }

  /**
   * Checks that names, plans and days fit together.
   *
   * @throws OutOfRange naming the field that does not fit
   */
  static void agree(Lesson lesson) {
    LessonChecks checks = new LessonChecks(lesson);
    checks.name();
    checks.settings();
    checks.task();
    checks.charts();
    checks.records();
    lesson.judged().forEach(checks::judged);
    for (Lesson.Figure figure : lesson.figures()) {
      checks.measure("figures", figure.measure());
    }
    for (Lesson.Claim claim : lesson.claims()) {
      checks.measure(LessonMeasureForm.CLAIMS.name(), claim.larger());
      checks.measure(LessonMeasureForm.CLAIMS.name(), claim.smaller());
    }
  }

  private void name() {
    if (!lesson.name().matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      throw new OutOfRange(
          "name", lesson.name(), "small letters, digits and single hyphens between them");
    }
  }

  private void settings() {
    for (Study setting : lesson.settings()) {
      if (setting.washes().isPresent()) {
        throw new OutOfRange(
            LessonForm.SETTINGS.name(),
            "given washes",
            "colonies that tell their infestation; remove \"washes\"");
      }
    }
    List<String> names = lesson.lines().stream().map(Lesson.Line::name).toList();
    for (String name : names) {
      if (names.indexOf(name) != names.lastIndexOf(name)) {
        throw new OutOfRange(
            LessonForm.SETTINGS.name(),
            "holding two plans named \"" + name + "\"",
            "another name for each plan, across all settings");
      }
    }
    if (names.size() > 4) {
      throw new OutOfRange(
          LessonForm.SETTINGS.name(), "holding " + names.size() + " plans", "1 to 4 plans in all");
    }
  }

  private void task() {
    if (lesson.task() instanceof Lesson.Draw draw) {
      draw.days().forEach(day -> day(LessonForm.TASK.name(), draw.plan(), day));
    } else if (lesson.task() instanceof Lesson.Washes washes) {
      day(LessonForm.TASK.name(), washes.plan(), washes.on());
    }
  }

  private void records() {
    for (List<String> row : lesson.records()) {
      if (row.size() != lesson.records().get(0).size()) {
        throw new OutOfRange(
            "records",
            "with a row of " + row.size() + " cells",
            "as many cells in each row as in the heading, " + lesson.records().get(0).size());
      }
    }
  }

  private void judged(Lesson.Judged judged) {
    String field = LessonJudgedForm.JUDGED.name();
    MiticideCourse given = judgedCourse(field, judged);
    List<Lesson.Count> washes = judged.washes();
    for (int i = 0; i < washes.size(); i++) {
      Lesson.Count wash = washes.get(i);
      if (wash.mites() > wash.bees()) {
        throw new OutOfRange(
            field, "with " + wash.mites() + " mites in " + wash.bees() + " bees", "fewer mites");
      }
      if (i > 0 && !wash.date().isAfter(washes.get(i - 1).date())) {
        throw new OutOfRange(field, "with a wash on " + wash.date(), "washes by rising days");
      }
      day(field, judged.plan(), wash.date());
    }
    if (washes.get(0).date().isAfter(given.from())
        || !washes.get(washes.size() - 1).date().isAfter(given.from())) {
      throw new OutOfRange(
          field,
          "about \"" + judged.hive() + "\"",
          "a wash up to " + given.from() + ", when the treatment began, and one after it");
    }
  }

  private MiticideCourse judgedCourse(String field, Lesson.Judged judged) {
    List<MiticideCourse> courses =
        plan(field, judged.plan()).scenario().plan().controls().stream()
            .flatMap(c -> c.course().stream())
            .toList();
    if (courses.size() != 1) {
      throw new OutOfRange(
          field,
          "about plan \"" + judged.plan() + "\" with " + courses.size() + " miticides",
          "a plan with one miticide");
    }
    return courses.get(0);
  }

  private void measure(String field, Lesson.Measure measure) {
    if (measure instanceof Lesson.OnDay day) {
      day(field, day.plan(), day.on());
    } else if (measure instanceof Lesson.Result result) {
      plan(field, result.plan());
    }
  }

  private void charts() {
    int plans = lesson.lines().size();
    for (Lesson.Chart chart : lesson.charts()) {
      if (plans > 1 && chart.show().size() > 1) {
        throw new OutOfRange(
            LessonForm.CHARTS.name(),
            "\"" + chart.title() + "\" with " + chart.show().size() + " quantities",
            "one quantity in each chart, since there are " + plans + " plans");
      }
    }
  }

  private void day(String field, String plan, LocalDate day) {
    Scenario scenario = plan(field, plan).scenario();
    LocalDate last = scenario.start().plusDays(scenario.days());
    if (day.isBefore(scenario.start()) || day.isAfter(last)) {
      throw new OutOfRange(field, "about " + day, scenario.start() + " to " + last);
    }
  }

  private Lesson.Line plan(String field, String plan) {
    List<Lesson.Line> lines = lesson.lines();
    List<String> names = lines.stream().map(Lesson.Line::name).toList();
    int at = names.indexOf(plan);
    if (at < 0) {
      String known = "a plan of the settings: " + String.join(", ", names);
      throw new OutOfRange(field, "about \"" + plan + "\"", known + Nearest.hint(plan, names));
    }
    return lines.get(at);
  }
}
