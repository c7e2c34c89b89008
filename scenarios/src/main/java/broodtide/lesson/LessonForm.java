package broodtide.lesson;

import broodtide.engine.Quantity;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.ListForm;
import broodtide.forms.ObjectForm;
import broodtide.forms.TextForm;
import broodtide.forms.WholeForm;
import broodtide.lesson.Lesson.Chart;
import broodtide.lesson.Lesson.EveningStep;
import broodtide.lesson.Lesson.Figure;
import broodtide.lesson.Lesson.Task;
import broodtide.lesson.Lesson.Topic;
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
  private static final Field<List<List<String>>> RECORDS =
      Field.optional(
          "records",
          new ListForm<>(new ListForm<>(TextForm.LINE, 2, 6), 2, 10),
          List.of(),
          "a table shown with the story, such as a hive's counts; its first row is the heading");
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
  static final Field<List<Figure>> FIGURES =
      Field.optional(
          "figures",
          new ListForm<>(
              new ObjectForm<>(
                  "figure",
                  "one number of the reveal, worked out by the engine",
                  List.of(SAY, LessonMeasureForm.MEASURE),
                  in -> new Figure(in.need(SAY), in.need(LessonMeasureForm.MEASURE)),
                  (f, out) -> {
                    out.put(SAY, f.say());
                    out.put(LessonMeasureForm.MEASURE, f.measure());
                  }),
              0,
              12),
          List.of(),
          "numbers read out at the reveal");
  private static final Field<String> REVEAL =
      Field.required("reveal", TextForm.NOTE, "what to see in the curves");
  private static final Field<String> TEACHER =
      Field.required("teacher", TextForm.NOTE, "note to the teacher");
  private static final Field<String> ASK = Field.required("ask", TextForm.NOTE, "the question");
  private static final Field<String> ANSWER =
      Field.required("answer", TextForm.NOTE, "the answer, on the teacher's sheet only");
  private static final Field<List<Topic>> DISCUSSION =
      Field.required(
          "discussion",
          new ListForm<>(
              new ObjectForm<>(
                  "topic",
                  "a question to talk about, with its answer",
                  List.of(ASK, ANSWER),
                  in -> new Topic(in.need(ASK), in.need(ANSWER)),
                  (t, out) -> {
                    out.put(ASK, t.ask());
                    out.put(ANSWER, t.answer());
                  }),
              1,
              8),
          "questions to talk about afterwards");
  private static final Field<Integer> MINUTES =
      Field.required("minutes", new WholeForm(1, 120, "minutes"), "how long");
  private static final Field<String> WHAT = Field.required("what", TextForm.NOTE, "what is done");
  private static final Field<List<EveningStep>> EVENING =
      Field.required(
          "evening",
          new ListForm<>(
              new ObjectForm<>(
                  "step",
                  "one part of the evening",
                  List.of(MINUTES, WHAT),
                  in -> new EveningStep(in.need(MINUTES), in.need(WHAT)),
                  (e, out) -> {
                    out.put(MINUTES, e.minutes());
                    out.put(WHAT, e.what());
                  }),
              1,
              10),
          "the time plan of one evening");
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
              RECORDS,
              CAUTION,
              SETTINGS,
              TASK,
              CHARTS,
              LessonJudgedForm.JUDGED,
              FIGURES,
              REVEAL,
              TEACHER,
              DISCUSSION,
              EVENING,
              LessonMeasureForm.CLAIMS,
              SOURCES),
          LessonForm::make,
          LessonForm::spell);

  private LessonForm() {}

  private static Lesson make(Fields in) {
    Lesson lesson =
        new Lesson(
            in.need(NAME),
            in.need(NUMBER),
            in.need(TITLE),
            in.need(STORY),
            in.need(QUESTION),
            in.need(RECORDS),
            in.given(CAUTION) ? Optional.of(in.need(CAUTION)) : Optional.empty(),
            in.need(SETTINGS),
            in.need(TASK),
            in.need(CHARTS),
            in.need(LessonJudgedForm.JUDGED),
            in.need(FIGURES),
            in.need(REVEAL),
            in.need(TEACHER),
            in.need(DISCUSSION),
            in.need(EVENING),
            in.need(LessonMeasureForm.CLAIMS),
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
    if (!l.records().isEmpty()) {
      out.put(RECORDS, l.records());
    }
    l.caution().ifPresent(c -> out.put(CAUTION, c));
    out.put(SETTINGS, l.settings());
    out.put(TASK, l.task());
    out.put(CHARTS, l.charts());
    if (!l.judged().isEmpty()) {
      out.put(LessonJudgedForm.JUDGED, l.judged());
    }
    out.put(FIGURES, l.figures());
    out.put(REVEAL, l.reveal());
    out.put(TEACHER, l.teacher());
    out.put(DISCUSSION, l.discussion());
    out.put(EVENING, l.evening());
    out.put(LessonMeasureForm.CLAIMS, l.claims());
    out.put(SOURCES, l.sources());
  }
}
