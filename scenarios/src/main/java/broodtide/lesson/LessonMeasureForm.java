package broodtide.lesson;

import broodtide.engine.Quantity;
import broodtide.forms.ChoiceForm;
import broodtide.forms.DateForm;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.ListForm;
import broodtide.forms.NumberForm;
import broodtide.forms.ObjectForm;
import broodtide.forms.TextForm;
import broodtide.lesson.Lesson.Claim;
import broodtide.lesson.Lesson.Given;
import broodtide.lesson.Lesson.Measure;
import broodtide.lesson.Lesson.OnDay;
import broodtide.lesson.Lesson.Result;
import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.util.List;

/** Numbers of a lesson and what it claims of them, as JSON. */
final class LessonMeasureForm {
  private static final Field<String> PLAN =
      Field.optional("plan", TextForm.LINE, "name of a plan of one of the settings");
  private static final Field<Quantity> SHOW =
      Field.optional("show", LessonTaskForm.QUANTITY, "a quantity, with the day in \"on\"");
  private static final Field<Quantity> OF =
      Field.optional(
          "of",
          LessonTaskForm.QUANTITY,
          "when given, the number is the share of this quantity that the first one makes up");
  private static final Field<LocalDate> ON = Field.optional("on", DateForm.DATE, "the day");
  private static final Field<LessonResult> RESULT =
      Field.optional(
          "result",
          ChoiceForm.of(List.of(LessonResult.values()), LessonResult::word),
          "what the season comes to, instead of \"show\" and \"on\"");
  private static final Field<Double> NUMBER =
      Field.optional(
          "number", NumberForm.of(0, 1e7, "1"), "a plain number, instead of all the others");

  private static final ObjectForm<Measure> FORM =
      new ObjectForm<>(
          "measure",
          "a number: a quantity of a plan on a day, a result of a plan, or a plain number",
          List.of(PLAN, SHOW, OF, ON, RESULT, NUMBER),
          LessonMeasureForm::make,
          LessonMeasureForm::spell);

  static final Field<Measure> MEASURE = Field.required("measure", FORM, "the number");

  private static final Field<String> SAY =
      Field.required("say", TextForm.NOTE, "the claim in words");
  private static final Field<Measure> LARGER = Field.required("larger", FORM, "the larger number");
  private static final Field<Measure> SMALLER =
      Field.required("smaller", FORM, "the smaller number");
  private static final Field<Double> TIMES =
      Field.optional(
          "times",
          NumberForm.of(1e-3, 1e3, "1"),
          1.0,
          "the larger number is at least so many times the smaller one");

  static final Field<List<Claim>> CLAIMS =
      Field.required(
          "claims",
          new ListForm<>(
              new ObjectForm<>(
                  "claim",
                  "what the words say and the engine must show",
                  List.of(SAY, LARGER, SMALLER, TIMES),
                  in -> new Claim(in.need(SAY), in.need(LARGER), in.need(SMALLER), in.need(TIMES)),
                  (c, out) -> {
                    out.put(SAY, c.say());
                    out.put(LARGER, c.larger());
                    out.put(SMALLER, c.smaller());
                    out.put(TIMES, c.times());
                  }),
              1,
              12),
          "what the words say; a check tells whether the engine shows it");

  private LessonMeasureForm() {}

  private static Measure make(Fields in) {
    boolean day = in.given(SHOW) && in.given(ON) && in.given(PLAN);
    boolean result = in.given(RESULT) && in.given(PLAN) && !in.given(SHOW) && !in.given(ON);
    boolean number = in.given(NUMBER) && !in.given(PLAN) && !in.given(RESULT);
    if (number && !in.given(SHOW) && !in.given(ON)) {
      return new Given(in.need(NUMBER));
    }
    if (result && !in.given(NUMBER)) {
      return new Result(in.need(PLAN), in.need(RESULT));
    }
    if (day && !in.given(RESULT) && !in.given(NUMBER)) {
      return new OnDay(in.need(PLAN), in.need(SHOW), in.find(OF), in.need(ON));
    }
    throw new OutOfRange(
        "measure",
        "holding other fields together",
        "\"plan\", \"show\" and \"on\"; or \"plan\" and \"result\"; or \"number\" alone");
  }

  private static void spell(Measure measure, ObjectForm.Written out) {
    if (measure instanceof Given given) {
      out.put(NUMBER, given.number());
    } else if (measure instanceof Result result) {
      out.put(PLAN, result.plan());
      out.put(RESULT, result.result());
    } else if (measure instanceof OnDay day) {
      out.put(PLAN, day.plan());
      out.put(SHOW, day.show());
      day.of().ifPresent(q -> out.put(OF, q));
      out.put(ON, day.on());
    }
  }
}
