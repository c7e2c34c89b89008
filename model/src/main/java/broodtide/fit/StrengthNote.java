package broodtide.fit;

import broodtide.wash.Wash;
import java.util.OptionalDouble;
import org.apache.commons.math3.util.FastMath;

/**
 * A note of frames covered with bees, taken as lognormal around the adult bees.
 *
 * @param adults adult bees that the note stands for; empty when there is no note
 */
record StrengthNote(OptionalDouble adults) {
  /** Bees on a frame covered on both sides. Common practice, no source. */
  static final double BEES_PER_FRAME = 2000;

  /** Spread of such notes on the log scale: they are rough. Choice. */
  private static final double LOG_SD = 0.25;

  static StrengthNote of(Wash wash) {
    OptionalDouble frames = wash.framesOfBees();
    return new StrengthNote(
        frames.isPresent() && frames.getAsDouble() > 0
            ? OptionalDouble.of(BEES_PER_FRAME * frames.getAsDouble())
            : OptionalDouble.empty());
  }

  double logLikelihood(double bees) {
    if (adults.isEmpty()) {
      return 0;
    }
    double z = FastMath.log(adults.getAsDouble() / Math.max(1, bees)) / LOG_SD;
    return -0.5 * z * z;
  }
}
