/**
 * Questions about when and whether to act, each over the colonies that fit the washes of a case.
 *
 * <p>Entry points:
 *
 * <ul>
 *   <li>{@link broodtide.decision.WindowSearch#of} tries controls from different start days and
 *       gives {@link broodtide.decision.Windows}: the best time of each, how flat it is, and which
 *       days are ruled out;
 *   <li>{@link broodtide.decision.RuleTrial#of} plays monitoring rules through the rest of a
 *       season. A {@link broodtide.decision.Rule} is what decides; {@link
 *       broodtide.decision.RuleText#read} reads one, and a {@link broodtide.decision.RuleResult}
 *       says how it fared. {@link broodtide.decision.WashRound} says how often and how washes are
 *       taken;
 *   <li>{@link broodtide.decision.WashWorth#of} says what another wash is worth before deciding, by
 *       preposterior analysis over every count that it may show;
 *   <li>{@link broodtide.decision.TreatmentCheck#of} says whether a treatment worked, with {@link
 *       broodtide.decision.CountedEfficacy} from the counts alone and {@link
 *       broodtide.decision.Shortfall} for what to check;
 *   <li>{@link broodtide.decision.PlanText#read} reads a plan as people write one.
 * </ul>
 *
 * <p>Each question is asked of a {@link broodtide.assessment.ColonyCase} and its posterior. Windows
 * and washes are judged by an {@link broodtide.assessment.Outcome} of the caller's choice. Days,
 * plans and rules of one question meet the same colonies with the same luck, so that they differ by
 * what is done. {@link broodtide.decision.MemoryNeed} reckons what a run will hold before it
 * begins.
 *
 * <p>Questions that cannot be answered are refused with a {@link
 * broodtide.measure.RefusedException} that says why.
 *
 * <p>Results are immutable. The work is shared among the threads of the {@link
 * broodtide.engine.Workers} given; the same input and seed give the same bytes on any number of
 * them.
 *
 * @since 0.2.0
 */
@NullMarked
package broodtide.decision;

import org.jspecify.annotations.NullMarked;
