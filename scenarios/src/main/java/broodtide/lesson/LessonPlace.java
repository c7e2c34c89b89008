package broodtide.lesson;

import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.mite.Immigration;
import broodtide.season.Climate;
import broodtide.study.Study;
import java.time.LocalDate;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Where a lesson is taught. Days and months in its texts stand in braces, {@code {3 August}} or
 * {@code {August}}; south of the equator they are said half a year later, and so are the days of
 * its seasons. In another climate than its own the same words stand beside other figures, which
 * {@link LessonRun#broken} looks at.
 *
 * @param climate the climate to play in; empty for that of the lesson
 * @param south whether the place lies south of the equator
 */
public record LessonPlace(Optional<Climate> climate, boolean south) {
  private static final int HALF_A_YEAR = 6;
  private static final Pattern DAY =
      Pattern.compile(
          "\\{(?:([1-9]|[12][0-9]|3[01]) )?("
              + Arrays.stream(Month.values())
                  .map(LessonPlace::name)
                  .collect(Collectors.joining("|"))
              + ")}");

  /** {@return the lesson as it is taught there, its texts without braces} */
  public Lesson of(Lesson l) {
    return new Lesson(
        l.name(),
        l.number(),
        text(l.title()),
        text(l.story()),
        text(l.question()),
        l.records().stream().map(this::texts).toList(),
        l.caution().map(this::text),
        l.settings().stream().map(this::study).toList(),
        task(l.task()),
        l.charts().stream().map(c -> new Lesson.Chart(text(c.title()), c.show())).toList(),
        l.judged().stream().map(this::judged).toList(),
        l.figures().stream()
            .map(f -> new Lesson.Figure(text(f.say()), measure(f.measure())))
            .toList(),
        text(l.reveal()),
        text(l.teacher()),
        l.discussion().stream()
            .map(t -> new Lesson.Topic(text(t.ask()), text(t.answer())))
            .toList(),
        l.evening().stream().map(e -> new Lesson.EveningStep(e.minutes(), text(e.what()))).toList(),
        l.claims().stream()
            .map(
                c ->
                    new Lesson.Claim(
                        text(c.say()), measure(c.larger()), measure(c.smaller()), c.times()))
            .toList(),
        texts(l.sources()));
  }

  private List<String> texts(List<String> all) {
    return all.stream().map(this::text).toList();
  }

  private String text(String text) {
    return DAY.matcher(text).replaceAll(this::spelled);
  }

  private String spelled(MatchResult found) {
    Month month =
        Arrays.stream(Month.values())
            .filter(m -> name(m).equals(found.group(2)))
            .findFirst()
            .orElseThrow();
    if (found.group(1) == null) {
      return name(south ? month.plus(HALF_A_YEAR) : month);
    }
    int last = month.minLength();
    LocalDate day =
        moved(LocalDate.of(2027, month, Math.min(last, Integer.parseInt(found.group(1)))));
    return day.getDayOfMonth() + " " + name(day.getMonth());
  }

  private static String name(Month month) {
    return month.getDisplayName(TextStyle.FULL, Locale.ENGLISH);
  }

  private LocalDate moved(LocalDate day) {
    return south ? day.plusMonths(HALF_A_YEAR) : day;
  }

  private Study study(Study s) {
    boolean turn = south && !s.southern();
    List<Immigration.Window> arrivals =
        turn ? new Immigration(s.immigration()).inSouth().windows() : s.immigration();
    return new Study(
        s.title(),
        climate.orElse(s.climate()),
        south || s.southern(),
        moved(s.start()),
        moved(s.until()),
        s.colony(),
        s.surroundings(),
        arrivals,
        s.washes(),
        s.given().stream().map(this::control).toList(),
        s.plans().stream()
            .map(p -> new Plan(text(p.name()), p.controls().stream().map(this::control).toList()))
            .toList(),
        s.thresholds(),
        s.bees(),
        s.mites(),
        s.highs(),
        s.resistant());
  }

  private Control control(Control c) {
    return c.startingOn(moved(c.from()));
  }

  private Lesson.Judged judged(Lesson.Judged j) {
    return new Lesson.Judged(
        text(j.hive()),
        text(j.plan()),
        j.washes().stream()
            .map(w -> new Lesson.Count(moved(w.date()), w.mites(), w.bees()))
            .toList());
  }

  private Lesson.Task task(Lesson.Task task) {
    if (task instanceof Lesson.Draw d) {
      return new Lesson.Draw(
          text(d.plan()),
          d.show(),
          d.days().stream().map(this::moved).toList(),
          d.top(),
          d.direction());
    }
    if (task instanceof Lesson.Washes w) {
      return new Lesson.Washes(text(w.plan()), moved(w.on()), w.bees(), w.washes(), w.method());
    }
    return new Lesson.Choose(
        ((Lesson.Choose) task)
            .choices().stream()
                .map(c -> new Lesson.Choice(text(c.text()), c.right(), text(c.because())))
                .toList());
  }

  private Lesson.Measure measure(Lesson.Measure m) {
    if (m instanceof Lesson.OnDay d) {
      return new Lesson.OnDay(text(d.plan()), d.show(), d.of(), moved(d.on()));
    }
    if (m instanceof Lesson.Result r) {
      return new Lesson.Result(text(r.plan()), r.result());
    }
    return m;
  }
}
