/**
 * The daily engine: colonies and their mites, one day at a time, many colonies in lockstep.
 *
 * <p>A {@link broodtide.engine.Scenario} says what is done, where and when: a {@link
 * broodtide.engine.ColonyModel} with all the rates, a plan, a first day and a number of days. A
 * {@link broodtide.engine.SimulatedColony} sets one colony apart from others in the same place.
 * Entry points:
 *
 * <ul>
 *   <li>{@link broodtide.engine.DailyEngine#run} plays one colony and returns a {@link
 *       broodtide.engine.Trajectory}, every {@link broodtide.engine.Quantity} on every day;
 *   <li>{@link broodtide.engine.EnsembleRun#of} plays many and keeps chosen quantities of them;
 *   <li>{@link broodtide.engine.Ensemble#run} plays many and shows each day to a {@link
 *       broodtide.engine.DayObserver}, which keeps what it likes.
 * </ul>
 *
 * <p>Colonies begin as {@link broodtide.engine.StandardColony} finds them: it runs the climate's
 * standard year, and then seeks the mites that lead to the infestation asked for. Each engine shows
 * its state as a {@link broodtide.engine.ColonyView}, with a {@link broodtide.engine.MiteLedger} of
 * where mites came from and went. {@link broodtide.engine.AdultClass} is the one list of the
 * classes of adult bees, from which every part reads, copies and scales them.
 *
 * <p>{@link broodtide.engine.Workers} share numbered parts of work among threads. Each part writes
 * to a place of its own, and no colony depends on its neighbours, so the same input gives the same
 * bytes on any number of threads.
 *
 * <p>Scenarios, models, members and results are immutable. An engine, a {@link
 * broodtide.engine.ColonyBlock} and an observer belong to one thread at a time. {@link
 * broodtide.engine.Schedule}, {@link broodtide.engine.ColonyBlock} and {@link
 * broodtide.engine.Trajectory.Recorder} are public for the package {@code flow} alone.
 *
 * @since 0.2.0
 */
@NullMarked
package broodtide.engine;

import org.jspecify.annotations.NullMarked;
