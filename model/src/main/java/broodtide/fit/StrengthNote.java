package broodtide.fit;

import broodtide.wash.Wash;
import java.util.OptionalDouble;
import org.apache.commons.math3.util.FastMath;

/**
 * A note of frames covered with bees, taken as lognormal around the adult bees.
 *
 * @param adults adult bees that the note stands for; empty when there is no note
 */
public record StrengthNote(OptionalDouble adults) {
  /**
   * Adult bees on a frame covered on both sides: 2,000 to 2,400 in common practice, no source; the
   * middle by choice.
   */
  public static final double BEES_PER_FRAME = 2200;

  /** Spread of such notes on the log scale: they are rough. Choice. */
  private static final double LOG_SD = 0.25;

  /**
   * {@return the note that came with a wash; none of no frames, which says nothing of a living
   * colony}
   *
   * @param wash the wash with its note, if it has one
   */
  public static StrengthNote of(Wash wash) {
    OptionalDouble frames = wash.framesOfBees();
    return new StrengthNote(
        frames.isPresent() && frames.getAsDouble() > 0
            ? OptionalDouble.of(BEES_PER_FRAME * frames.getAsDouble())
            : OptionalDouble.empty());
  }

  /** Log density of the note, on the log scale, in a colony of so many adult bees. */
  double logLikelihood(double bees) {
    if (adults.isEmpty()) {
      return 0;
    }
    double z = FastMath.log(adults.getAsDouble() / Math.max(1, bees)) / LOG_SD;
    return -0.5 * z * z - FastMath.log(LOG_SD * FastMath.sqrt(2 * FastMath.PI));
  }
}
