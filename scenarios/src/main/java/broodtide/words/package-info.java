/**
 * English made of figures, for every screen, page and file alike.
 *
 * <p>Entry points:
 *
 * <ul>
 *   <li>{@link broodtide.words.Answer} says what happens to one colony and what could be done, in a
 *       sentence and some further ones;
 *   <li>{@link broodtide.words.WindowWords#first} says when to begin, how flat the best time is and
 *       what a delay costs;
 *   <li>{@link broodtide.words.OutcomeWords} names outcomes and their amounts, and {@link
 *       broodtide.words.UnknownWords} the unknowns of a colony;
 *   <li>{@link broodtide.words.Odds#words} puts a chance into natural frequencies, such as 3 in 10;
 *   <li>{@link broodtide.words.Digits} writes numbers with no more digits than are known, and
 *       {@link broodtide.words.Plain} writes days and infestations;
 *   <li>{@link broodtide.words.Glossary#of} explains the terms that a text uses.
 * </ul>
 *
 * <p>Values come in as numbers and dates and become text here, last of all. Nothing is worked out
 * that another package could want as a figure. Faults and refusals keep their words where they are
 * found, since whoever finds them knows best how to mend them.
 *
 * <p>Texts are plain: no markup, no colour, no line breaks. Whoever shows them adds these. The
 * language is English and numbers are written alike on every machine, whatever its locale.
 * Sentences state estimates; they never tell a beekeeper what to do.
 *
 * <p>Nothing here keeps state but the figures it was given. The words of a comparison belong to the
 * thread of its comparison; everything else may be shared between threads.
 */
@NullMarked
package broodtide.words;

import org.jspecify.annotations.NullMarked;
