package broodtide.lesson;

import broodtide.forms.BadInput;
import broodtide.forms.NeatJson;
import broodtide.forms.Reading;
import broodtide.forms.Source;

/** Lessons of the class page as JSON. */
public final class LessonFile {
  private LessonFile() {}

  /**
   * Reads a lesson.
   *
   * @param source where the text comes from; its name appears in every fault
   * @return the lesson
   * @throws BadInput with every fault there is
   */
  public static Lesson read(Source source) {
    return Reading.whole(source, LessonForm.FORM);
  }

  /**
   * {@return a lesson as the text of a file, its controls written out in full}
   *
   * @param lesson the lesson
   */
  public static String write(Lesson lesson) {
    return NeatJson.text(LessonForm.FORM.write(lesson));
  }
}
