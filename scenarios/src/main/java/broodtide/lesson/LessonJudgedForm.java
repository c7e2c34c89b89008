package broodtide.lesson;

import broodtide.forms.DateForm;
import broodtide.forms.Field;
import broodtide.forms.ListForm;
import broodtide.forms.ObjectForm;
import broodtide.forms.TextForm;
import broodtide.forms.WholeForm;
import broodtide.lesson.Lesson.Count;
import broodtide.lesson.Lesson.Judged;
import java.time.LocalDate;
import java.util.List;

/** Hives of a lesson whose washes judge a treatment, as JSON. */
final class LessonJudgedForm {
  private static final int MOST_BEES = 1000;

  private static final Field<LocalDate> DATE =
      Field.required("date", DateForm.DATE, "day of the wash");
  private static final Field<Integer> MITES =
      Field.required("mites", new WholeForm(0, MOST_BEES, "mites"), "mites found");
  private static final Field<Integer> BEES =
      Field.required("bees", new WholeForm(50, MOST_BEES, "bees"), "bees in the wash");
  private static final Field<String> HIVE = Field.required("hive", TextForm.LINE, "its name");
  private static final Field<String> PLAN =
      Field.required(
          "plan",
          TextForm.LINE,
          "the plan whose one miticide the hive was given; its setting says where the hive stands");
  private static final Field<List<Count>> WASHES =
      Field.required(
          "washes",
          new ListForm<>(
              new ObjectForm<>(
                  "count",
                  "a wash in alcohol of a hive",
                  List.of(DATE, MITES, BEES),
                  in -> new Count(in.need(DATE), in.need(MITES), in.need(BEES)),
                  (c, out) -> {
                    out.put(DATE, c.date());
                    out.put(MITES, c.mites());
                    out.put(BEES, c.bees());
                  }),
              2,
              6),
          "its washes by day, at least one up to the treatment's first day and one after it");

  static final Field<List<Judged>> JUDGED =
      Field.optional(
          "judged",
          new ListForm<>(
              new ObjectForm<>(
                  "judged",
                  "a hive that was washed before and after a treatment",
                  List.of(HIVE, PLAN, WASHES),
                  in -> new Judged(in.need(HIVE), in.need(PLAN), in.need(WASHES)),
                  (j, out) -> {
                    out.put(HIVE, j.hive());
                    out.put(PLAN, j.plan());
                    out.put(WASHES, j.washes());
                  }),
              0,
              3),
          List.of(),
          "hives of which the reveal shows what their washes say of a treatment: mites with it and"
              + " without it. Its efficacy is shown as believed before the washes and with them");

  private LessonJudgedForm() {}
}
