package broodtide.assessment;

import broodtide.catalog.Assumptions;
import broodtide.catalog.ResistantMites;
import broodtide.engine.StandardColony;
import broodtide.fit.Prior;
import broodtide.fit.Priors;
import broodtide.fit.Unknown;
import broodtide.study.Study;
import java.util.OptionalDouble;

/** Priors moved to what a study says of its colony. */
public final class StudyPriors {
  /** How well a beekeeper knows the infestation or the size written into a study; choice. */
  private static final double STATED = 0.25;

  private StudyPriors() {}

  /**
   * {@return the usual priors, moved to the infestation, bees, strength, stock and resistance that
   * a study gives}
   *
   * @param study the study; what it leaves open keeps its usual prior
   */
  public static Priors of(Study study) {
    Priors usual = Priors.defaults();
    Prior infestation = usual.of(Unknown.INFESTATION);
    OptionalDouble stated = study.colony().infestation();
    if (stated.isPresent()) {
      infestation = infestation.with(Math.max(0.001, stated.getAsDouble()), STATED);
    }
    Prior size = usual.of(Unknown.START_SIZE);
    OptionalDouble bees = study.colony().bees(Assumptions.usual());
    if (bees.isPresent()) {
      double standard = StandardColony.on(study.model(), study.start()).adults();
      double factor = bees.getAsDouble() / standard / study.colony().strength();
      size = size.with(Math.min(size.max(), factor), STATED);
    }
    Prior reproduction = usual.of(Unknown.REPRODUCTION_FACTOR);
    Prior laying = usual.of(Unknown.LAYING_FACTOR);
    double vigour = Math.max(0.01, study.colony().stock().vigour());
    Priors moved =
        usual
            .with(Unknown.INFESTATION, infestation)
            .with(Unknown.REPRODUCTION_FACTOR, reproduction.with(vigour, reproduction.logSd()))
            .with(Unknown.LAYING_FACTOR, laying.with(study.colony().strength(), laying.logSd()))
            .with(Unknown.START_SIZE, size);
    return ResistantMites.believed("\"resistant\" of the study", study.resistant(), moved);
  }
}
