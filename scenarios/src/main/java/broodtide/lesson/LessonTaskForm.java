package broodtide.lesson;

import broodtide.engine.Quantity;
import broodtide.forms.ChoiceForm;
import broodtide.forms.DateForm;
import broodtide.forms.Field;
import broodtide.forms.KindForm;
import broodtide.forms.ListForm;
import broodtide.forms.NumberForm;
import broodtide.forms.ObjectForm;
import broodtide.forms.TextForm;
import broodtide.forms.TruthForm;
import broodtide.forms.WholeForm;
import broodtide.lesson.Lesson.Choice;
import broodtide.lesson.Lesson.Choose;
import broodtide.lesson.Lesson.Draw;
import broodtide.lesson.Lesson.Task;
import broodtide.lesson.Lesson.Washes;
import broodtide.measure.OutOfRange;
import broodtide.wash.WashMethod;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

/** What learners do in a lesson, as JSON. */
final class LessonTaskForm {
  /** A quantity by its words, for example {@code mites-on-bees}. */
  static final ChoiceForm<Quantity> QUANTITY =
      ChoiceForm.of(
          List.of(Quantity.values()), q -> q.name().toLowerCase(Locale.ROOT).replace('_', '-'));

  static final Field<String> PLAN =
      Field.required("plan", TextForm.LINE, "name of a plan of one of the settings");
  static final Field<Quantity> SHOW = Field.required("show", QUANTITY, "what is shown");
  static final Field<LocalDate> ON = Field.required("on", DateForm.DATE, "the day");

  private static final Field<String> TEXT = Field.required("text", TextForm.LINE, "the answer");
  private static final Field<Boolean> RIGHT =
      Field.optional("right", new TruthForm(), false, "whether this is the right answer");
  private static final Field<String> BECAUSE =
      Field.required("because", TextForm.NOTE, "what is said to whoever picked it");
  private static final Field<List<Choice>> CHOICES =
      Field.required(
          "choices",
          new ListForm<>(
              new ObjectForm<>(
                  "choice",
                  "one answer",
                  List.of(TEXT, RIGHT, BECAUSE),
                  in -> new Choice(in.need(TEXT), in.need(RIGHT), in.need(BECAUSE)),
                  (c, out) -> {
                    out.put(TEXT, c.text());
                    out.put(RIGHT, c.right());
                    out.put(BECAUSE, c.because());
                  }),
              2,
              6),
          "answers to pick from, one of them right");
  private static final Field<List<LocalDate>> DAYS =
      Field.required(
          "days",
          new ListForm<>(DateForm.DATE, 3, 8),
          "days through which the curve is drawn, rising; the value of the first is given");
  private static final Field<Double> TOP =
      Field.required(
          "top",
          NumberForm.of(1e-3, 1e6, "1"),
          "upper end of the axis, in the unit of what is drawn");
  private static final Field<Integer> BEES =
      Field.required("bees", new WholeForm(50, 1000, "bees"), "bees in a wash");
  private static final Field<Integer> WASHES =
      Field.required("washes", new WholeForm(5, 100, "washes"), "washes drawn");

  private static final Field<Boolean> DIRECTION =
      Field.optional(
          "direction",
          new TruthForm(),
          false,
          "whether only rising and falling is scored, not how high the curve runs");
  private static final Field<WashMethod> METHOD =
      Field.optional(
          "method",
          ChoiceForm.of(List.of(WashMethod.values()), WashMethod::id),
          WashMethod.ALCOHOL,
          "what the mites are taken off with; each method leaves some of them behind");

  static final KindForm<Task> FORM =
      new KindForm<>(
          "task",
          List.of(
              KindForm.kind(
                  "choose",
                  Choose.class,
                  "learners pick an answer",
                  List.of(CHOICES),
                  in -> new Choose(oneRight(in.need(CHOICES))),
                  (t, out) -> out.put(CHOICES, t.choices())),
              KindForm.kind(
                  "draw",
                  Draw.class,
                  "learners draw a curve",
                  List.of(PLAN, SHOW, DAYS, TOP, DIRECTION),
                  in ->
                      new Draw(
                          in.need(PLAN),
                          in.need(SHOW),
                          rising(in.need(DAYS)),
                          in.need(TOP),
                          in.need(DIRECTION)),
                  (t, out) -> {
                    out.put(PLAN, t.plan());
                    out.put(SHOW, t.show());
                    out.put(DAYS, t.days());
                    out.put(TOP, t.top());
                    out.put(DIRECTION, t.direction());
                  }),
              KindForm.kind(
                  "washes",
                  Washes.class,
                  "learners guess how much counts of one colony on one day differ",
                  List.of(PLAN, ON, BEES, WASHES, METHOD),
                  in ->
                      new Washes(
                          in.need(PLAN),
                          in.need(ON),
                          in.need(BEES),
                          in.need(WASHES),
                          in.need(METHOD)),
                  (t, out) -> {
                    out.put(PLAN, t.plan());
                    out.put(ON, t.on());
                    out.put(BEES, t.bees());
                    out.put(WASHES, t.washes());
                    out.put(METHOD, t.method());
                  })));

  private LessonTaskForm() {}

  private static List<Choice> oneRight(List<Choice> choices) {
    long right = choices.stream().filter(Choice::right).count();
    if (right != 1) {
      throw new OutOfRange("choices", right + " times \"right\": true", "exactly one right answer");
    }
    return choices;
  }

  private static List<LocalDate> rising(List<LocalDate> days) {
    for (int i = 1; i < days.size(); i++) {
      if (!days.get(i).isAfter(days.get(i - 1))) {
        throw new OutOfRange("days", days.get(i).toString(), "days that rise");
      }
    }
    return days;
  }
}
