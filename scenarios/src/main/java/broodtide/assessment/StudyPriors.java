package broodtide.assessment;

import broodtide.catalog.Assumptions;
import broodtide.engine.StandardColony;
import broodtide.fit.Prior;
import broodtide.fit.Priors;
import broodtide.study.Study;
import java.util.OptionalDouble;

/** Priors moved to what a study says of its colony. */
public final class StudyPriors {
  /** How well a beekeeper knows the infestation or the size written into a study; choice. */
  private static final double STATED = 0.25;

  private StudyPriors() {}

  /**
   * {@return the usual priors, moved to the infestation, bees, strength and stock that a study
   * gives}
   *
   * @param study the study; what it leaves open keeps its usual prior
   */
  public static Priors of(Study study) {
    Priors usual = Priors.defaults();
    Prior infestation = usual.infestation();
    OptionalDouble stated = study.colony().infestation();
    if (stated.isPresent()) {
      infestation = infestation.with(Math.max(0.001, stated.getAsDouble()), STATED);
    }
    Prior size = usual.startSize();
    OptionalDouble bees = study.colony().bees(Assumptions.usual());
    if (bees.isPresent()) {
      double standard = StandardColony.on(study.model(), study.start()).adults();
      double factor = bees.getAsDouble() / standard / study.colony().strength();
      size = size.with(Math.min(size.most(), factor), STATED);
    }
    return new Priors(
        infestation,
        usual
            .vigour()
            .with(Math.max(0.01, study.colony().stock().vigour()), usual.vigour().logSd()),
        usual.strength().with(study.colony().strength(), usual.strength().logSd()),
        size,
        usual.immigration(),
        usual.dispersion(),
        usual.success(),
        usual.infectivity());
  }
}
