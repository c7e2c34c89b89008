/**
 * The core: from washes and a place to what is known of a colony, and to what plans do to it.
 *
 * <p>A {@link broodtide.assessment.ColonyCase} gathers everything known of one colony: rates and
 * place, washes, what was done, thresholds, priors, and the days to look at. Entry points:
 *
 * <ul>
 *   <li>{@link broodtide.assessment.ColonyCases} makes cases of washes or of a study;
 *   <li>{@link broodtide.assessment.Assessment#of} reads the washes of a case: it seeks simulated
 *       colonies that fit them;
 *   <li>{@link broodtide.assessment.Assessment#compare} plays plans with these colonies, every plan
 *       with the same luck; each becomes a {@link broodtide.assessment.PlanRun}, a plan that cannot
 *       be played is named with its reason, and {@link broodtide.assessment.Comparison#decision} is
 *       the one answer of all commands;
 *   <li>{@link broodtide.assessment.CountReading#of} reads one count in its season, and {@link
 *       broodtide.assessment.CountOutlook} says where such a colony would stand if it were left
 *       alone;
 *   <li>{@link broodtide.assessment.HiveChance} and {@link broodtide.assessment.ApiaryCount#of} say
 *       how many colonies of an apiary are over their threshold or lost, when those of a yard share
 *       a part of their season;
 *   <li>{@link broodtide.assessment.UsualPlans#of} gives the plans that a beekeeper would weigh
 *       first.
 * </ul>
 *
 * <p>{@link broodtide.assessment.Outcome} is what plans are judged by, {@link
 * broodtide.assessment.Difference} one figure less another colony by colony, {@link
 * broodtide.assessment.QuantileSummary} the middle of a figure with its bands. {@link
 * broodtide.engine.Wintering} turns bees at the {@link broodtide.engine.SpringLow} into the chance
 * that a colony is lost. {@link broodtide.assessment.PlanCheck} and {@link
 * broodtide.assessment.Obstacles} say what stands against a control on a day, such as supers,
 * warmth or brood; nothing is changed silently. {@code StudyPriors} moves the priors to what a
 * study states.
 *
 * <p>Figures are simulated estimates and never instructions; {@link broodtide.assessment.Caution}
 * has the wording.
 *
 * <p>Cases and figures are immutable. A {@link broodtide.assessment.PlanRun} keeps figures when
 * they are first asked for and belongs to one thread at a time. The same input and seed give the
 * same bytes on any number of threads.
 *
 * @since 0.2.0
 */
@NullMarked
package broodtide.assessment;

import org.jspecify.annotations.NullMarked;
