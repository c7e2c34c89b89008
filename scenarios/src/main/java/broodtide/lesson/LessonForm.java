package broodtide.lesson;

import broodtide.engine.Quantity;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.ListForm;
import broodtide.forms.ObjectForm;
import broodtide.forms.TextForm;
import broodtide.forms.WholeForm;
import broodtide.lesson.Lesson.Chart;
import broodtide.lesson.Lesson.Figure;
import broodtide.lesson.Lesson.Task;
import broodtide.study.Study;
import broodtide.study.StudyForm;
import java.util.List;
import java.util.Optional;

/** The fields of a lesson. */
final class LessonForm {
  private static final Field<String> SCHEMA =
      Field.optional(
          "$schema", TextForm.NOTE, "where an editor finds the schema; not read otherwise");
  private static final Field<String> NAME =
      Field.required("name", TextForm.LINE, "short name, also its address on the class page");
  private static final Field<Integer> NUMBER =
      Field.required(
          "number", new WholeForm(1, 99, "lessons"), "place in the row of lessons, from 1");
  private static final Field<String> TITLE =
      Field.required("title", TextForm.LINE, "one line for people");
  private static final Field<String> STORY =
      Field.required("story", TextForm.NOTE, "what is going on in the hive");
  private static final Field<String> QUESTION =
      Field.required("question", TextForm.NOTE, "what learners are asked");
  private static final Field<String> CAUTION =
      Field.optional(
          "caution", TextForm.NOTE, "cautions for the work in the lesson; shown to learners");
  static final Field<List<Study>> SETTINGS =
      Field.required(
          "settings",
          new ListForm<>(StudyForm.FORM, 1, 3),
          "colonies that the engine plays; each tells its infestation and has no washes");
  static final Field<Task> TASK =
      Field.required("task", LessonTaskForm.FORM, "what learners do before the reveal");

  private static final Field<String> CHART_TITLE =
      Field.required("title", TextForm.LINE, "what it shows, with the unit");
  private static final Field<List<Quantity>> SHOWN =
      Field.required(
          "show",
          new ListForm<>(LessonTaskForm.QUANTITY, 1, 4),
          "quantities drawn; only one where there are several plans");
  static final Field<List<Chart>> CHARTS =
      Field.required(
          "charts",
          new ListForm<>(
              new ObjectForm<>(
                  "chart",
                  "one chart of the reveal",
                  List.of(CHART_TITLE, SHOWN),
                  in -> new Chart(in.need(CHART_TITLE), in.need(SHOWN)),
                  (c, out) -> {
                    out.put(CHART_TITLE, c.title());
                    out.put(SHOWN, c.show());
                  }),
              1,
              3),
          "what is drawn at the reveal");

  private static final Field<String> SAY =
      Field.required("say", TextForm.LINE, "what the number is");
  private static final Field<Quantity> OF =
      Field.optional(
          "of",
          LessonTaskForm.QUANTITY,
          "when given, the number is the share of this quantity that the first one makes up");
  static final Field<List<Figure>> FIGURES =
      Field.optional(
          "figures",
          new ListForm<>(
              new ObjectForm<>(
                  "figure",
                  "one number of the reveal, worked out by the engine",
                  List.of(SAY, LessonTaskForm.PLAN, LessonTaskForm.SHOW, OF, LessonTaskForm.ON),
                  LessonForm::figure,
                  (f, out) -> {
                    out.put(SAY, f.say());
                    out.put(LessonTaskForm.PLAN, f.plan());
                    out.put(LessonTaskForm.SHOW, f.show());
                    f.of().ifPresent(q -> out.put(OF, q));
                    out.put(LessonTaskForm.ON, f.on());
                  }),
              0,
              12),
          List.of(),
          "numbers read out at the reveal");
  private static final Field<String> REVEAL =
      Field.required("reveal", TextForm.NOTE, "what to see in the curves");
  private static final Field<String> TEACHER =
      Field.required("teacher", TextForm.NOTE, "note to the teacher");
  private static final Field<List<String>> DISCUSSION =
      Field.required(
          "discussion", new ListForm<>(TextForm.NOTE, 1, 8), "questions to talk about afterwards");
  private static final Field<List<String>> SOURCES =
      Field.required(
          "sources",
          new ListForm<>(TextForm.NOTE, 1, 20),
          "where the matter is known from; each line names a source or says \"choice\"");

  static final ObjectForm<Lesson> FORM =
      new ObjectForm<>(
          "lesson",
          "a lesson of the class page: learners say what they expect, then see what the engine"
              + " plays",
          List.of(
              SCHEMA,
              NAME,
              NUMBER,
              TITLE,
              STORY,
              QUESTION,
              CAUTION,
              SETTINGS,
              TASK,
              CHARTS,
              FIGURES,
              REVEAL,
              TEACHER,
              DISCUSSION,
              SOURCES),
          LessonForm::make,
          LessonForm::spell);

  private LessonForm() {}

  private static Figure figure(Fields in) {
    Optional<Quantity> of = in.given(OF) ? Optional.of(in.need(OF)) : Optional.empty();
    return new Figure(
        in.need(SAY),
        in.need(LessonTaskForm.PLAN),
        in.need(LessonTaskForm.SHOW),
        of,
        in.need(LessonTaskForm.ON));
  }

  private static Lesson make(Fields in) {
    Lesson lesson =
        new Lesson(
            in.need(NAME),
            in.need(NUMBER),
            in.need(TITLE),
            in.need(STORY),
            in.need(QUESTION),
            in.given(CAUTION) ? Optional.of(in.need(CAUTION)) : Optional.empty(),
            in.need(SETTINGS),
            in.need(TASK),
            in.need(CHARTS),
            in.need(FIGURES),
            in.need(REVEAL),
            in.need(TEACHER),
            in.need(DISCUSSION),
            in.need(SOURCES));
    LessonChecks.agree(lesson);
    return lesson;
  }

  private static void spell(Lesson l, ObjectForm.Written out) {
    out.put(NAME, l.name());
    out.put(NUMBER, l.number());
    out.put(TITLE, l.title());
    out.put(STORY, l.story());
    out.put(QUESTION, l.question());
    l.caution().ifPresent(c -> out.put(CAUTION, c));
    out.put(SETTINGS, l.settings());
    out.put(TASK, l.task());
    out.put(CHARTS, l.charts());
    out.put(FIGURES, l.figures());
    out.put(REVEAL, l.reveal());
    out.put(TEACHER, l.teacher());
    out.put(DISCUSSION, l.discussion());
    out.put(SOURCES, l.sources());
  }
}
