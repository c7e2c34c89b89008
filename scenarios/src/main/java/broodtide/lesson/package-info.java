/** Lessons for a class as files, and their shelf. */
@NullMarked
package broodtide.lesson;

import org.jspecify.annotations.NullMarked;
