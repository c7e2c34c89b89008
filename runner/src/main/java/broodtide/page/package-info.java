/**
 * The page for one's own hives, on this machine: counts, treatments, where the hives stand, plans,
 * and what is taken away.
 *
 * <p>Entry point: {@link broodtide.page.HivesSite} serves the page beside the class page, through a
 * {@link broodtide.web.LocalServer} that was opened with a token.
 *
 * <p>{@code HiveFolder} holds the user's files: the same {@code washes.csv}, {@code treatments.csv}
 * and {@code study.json} that commands read. They are read by {@code study} and saved through
 * {@link broodtide.files.KeptFolder}, which notices when somebody else changed them. {@code
 * TableCheck} looks at tables as they are typed. {@code PageJobs} works out answers, one at a time
 * for each open page; a new question ends the one before. {@code ApiaryWork} asks the core, and
 * sets what it says with the pieces of {@code report}. {@code Reminders} writes days for a
 * calendar.
 *
 * <p>All figures come from {@code assessment} and {@code decision}, all sentences made of figures
 * from {@code words}. The page adds none.
 *
 * <p>A site is asked by several threads at once; what it keeps is guarded.
 */
@NullMarked
package broodtide.page;

import org.jspecify.annotations.NullMarked;
