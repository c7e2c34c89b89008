/**
 * The class page: a local web page on which a club class plays colonies, and predicts before it
 * looks.
 *
 * <p>The entry point is {@link broodtide.classroom.ClassSite}, the {@link broodtide.web.Site} of
 * the page. It opens on the list of lessons, and answers three kinds of address:
 *
 * <ul>
 *   <li>the explorer: one picture of where the mites are, with what is done as flags on its days,
 *       and up to four scenarios over one another. {@code ExplorerState} reads all of it from the
 *       address, {@code Explorer} plays it, and a {@code Dial} is one number that can be turned;
 *   <li>the lessons: the story, what the class expects, the reveal with the seasons played, then
 *       the discussion;
 *   <li>seasons as JSON for the page's script ({@code SeasonJson}), and worksheets to print.
 * </ul>
 *
 * <p>A {@code Season} is one colony's season as it is shown; it ends on the day on which the colony
 * is lost. Every number comes from the engine. Lessons, from {@code broodtide.lesson}, hold
 * questions and words alone. Sentences say what a chart shows, for eyes and for ears, so nobody
 * needs to see the picture.
 *
 * <p>Requests are checked as files are: an address with a value out of its range is refused with a
 * message that names it. The page works without a network; nothing is stored, and nothing is known
 * of who looks at it.
 *
 * <p>A room is asked by several threads at once. Where colonies start takes long to find, so the
 * last few places are remembered, behind a lock. The same address gives the same answer, byte for
 * byte.
 */
@NullMarked
package broodtide.classroom;

import org.jspecify.annotations.NullMarked;
