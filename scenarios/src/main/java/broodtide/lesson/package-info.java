/**
 * Lessons for a class as files, and the JSON Schema of every file that a user may write.
 *
 * <p>Entry points:
 *
 * <ul>
 *   <li>{@link broodtide.lesson.Lessons#all} and {@link broodtide.lesson.Lessons#named} give the
 *       lessons of the shelf, or one of a teacher's own by path;
 *   <li>{@link broodtide.lesson.LessonFile#read} and {@link broodtide.lesson.LessonFile#write} turn
 *       files into lessons and back;
 *   <li>{@link broodtide.lesson.StudySchema#study}, {@link broodtide.lesson.StudySchema#climate},
 *       {@link broodtide.lesson.StudySchema#control} and {@link
 *       broodtide.lesson.StudySchema#lesson} give the schemas as texts.
 * </ul>
 *
 * <p>A {@link broodtide.lesson.Lesson} is a story, one to three studies that the engine plays, a
 * task in which learners say what they expect, and words for the reveal. It holds no results: every
 * number that a class sees comes from the engine, so a lesson cannot promise what the model does
 * not show.
 *
 * <p>A lesson is read by the forms of a study and some of its own. Checks across its fields refuse,
 * for example, a question about a day that is not played. Faults are told all at once as a {@link
 * broodtide.forms.BadInput}, with file, line, field and what is allowed.
 *
 * <p>How a lesson is shown is for {@code broodtide.classroom}. All types are immutable and may be
 * shared between threads.
 */
@NullMarked
package broodtide.lesson;

import org.jspecify.annotations.NullMarked;
