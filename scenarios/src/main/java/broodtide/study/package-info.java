/**
 * Studies, washes and treatments as files.
 *
 * <p>Entry points:
 *
 * <ul>
 *   <li>{@link broodtide.study.StudyFile#read} reads a study, {@link
 *       broodtide.study.StudyFile#write} writes one, and {@link broodtide.study.Studies#named}
 *       takes one from the shelf of worked studies or from a path;
 *   <li>{@link broodtide.study.WashFile#read} reads the washes of an apiary from a table, and
 *       {@link broodtide.study.WashFile#byColony} parts them by colony;
 *   <li>{@link broodtide.study.TreatmentFile#read} reads the treatments already given, and {@link
 *       broodtide.study.TreatmentFile#of} says which of them hold for a colony.
 * </ul>
 *
 * <p>A {@link broodtide.study.Study} is one colony in one place over one stretch of time: a
 * climate, what the colony is like on its first day ({@link broodtide.study.ColonyStart}), mites
 * from neighbours, washes, what was done, thresholds, rates that differ from their defaults, and
 * plans to lay side by side. {@link broodtide.study.Study#model} and {@link
 * broodtide.study.Study#scenarios} turn it into what the engine plays.
 *
 * <p>{@link broodtide.study.StudyForm} is the one definition from which files are read, written and
 * described; checks across fields stand apart from it. Faults are told all at once, with file,
 * line, field and what is allowed, as a {@link broodtide.forms.BadInput}. What was read but may not
 * be meant is a note of the file: {@link broodtide.study.LookalikeNames} points out names of
 * colonies that may be one and the same.
 *
 * <p>All values are immutable and may be shared between threads. Readers take the day that counts
 * as today from the caller, so that the same file reads the same on any day.
 *
 * @since 0.2.0
 */
@NullMarked
package broodtide.study;

import org.jspecify.annotations.NullMarked;
