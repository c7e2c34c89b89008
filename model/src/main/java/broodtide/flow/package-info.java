/**
 * The flow engine: the same colony as differential equations in continuous time.
 *
 * <p>It shares every rate with the daily engine and is written apart from it, so that each checks
 * the other. It also serves questions in which a day is too long a step. Every brood delay is a
 * chain of equal stages; a stay has the right mean, and spreads less the more stages there are.
 *
 * <p>The entry point is {@link broodtide.flow.FlowEngine#run}. It takes a scenario, a member, the
 * number of stages and a tolerance, and returns the season as a {@link broodtide.engine.Trajectory}
 * with what is known of its accuracy.
 *
 * <p>How the parts fit together:
 *
 * <ul>
 *   <li>{@link broodtide.flow.FlowState} says where each variable lies in the state vector, and
 *       reads a vector as a {@link broodtide.engine.ColonyView};
 *   <li>{@link broodtide.flow.FlowEquations} are the rates of change between two breaks of a plan;
 *   <li>{@link broodtide.flow.AdaptiveFlow} integrates them with the Dormand-Prince 8(5,3) method
 *       of Commons Math, stopping at each kink of the climate's curves.
 * </ul>
 *
 * <p>The engine starts from the state that the daily engine finds, for one colony. Single steps
 * such as splits and cut comb are taken between two legs of the integration.
 *
 * <p>{@link broodtide.flow.FlowEngine#run} may be called by any number of threads; the other types
 * hold the state of one run and belong to one thread.
 *
 * @since 0.2.0
 */
@NullMarked
package broodtide.flow;

import org.jspecify.annotations.NullMarked;
