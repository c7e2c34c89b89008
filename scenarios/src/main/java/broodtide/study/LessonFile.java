package broodtide.study;

/** Lessons of the class page as JSON. */
public final class LessonFile {
  private LessonFile() {}

  /**
   * Reads a lesson.
   *
   * @throws BadInput with every fault there is
   */
  public static Lesson read(Source source) {
    return Reading.whole(source, LessonForm.FORM);
  }

  /** A lesson as the text of a file, its controls written out in full. */
  public static String write(Lesson lesson) {
    return NeatJson.text(LessonForm.FORM.write(lesson));
  }
}
