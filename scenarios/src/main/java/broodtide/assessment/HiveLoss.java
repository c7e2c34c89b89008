package broodtide.assessment;

/**
 * What figures of an apiary must know of the loss of one of its hives under a plan.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @param chance for counts of lost hives
 * @param mites see {@link PlanRun#mitesWhenLost()}
 * @since 0.2.0
 */
public record HiveLoss(HiveChance chance, double mites) {}
