package broodtide.assessment;

import broodtide.engine.Survival;
import java.time.LocalDate;
import org.apache.commons.math3.util.FastMath;

/** Which simulated colonies of a hive a count of the apiary counts. */
@FunctionalInterface
interface Counted {
  /**
   * {@return the chance of being counted when simulated colonies weigh differently}
   *
   * @param weights by simulated colony
   * @param bees luck of the yard: how many bees a colony needs there
   * @param others luck of the yard: how often other causes take one
   */
  double at(double[] weights, double bees, double others);

  /**
   * {@return the chance of being counted here and not there, of the same simulated colonies}
   *
   * @param other the same under another plan
   * @param weights by simulated colony
   * @param bees luck of the yard: how many bees a colony needs there
   * @param others luck of the yard: how often other causes take one
   */
  default double only(Counted other, double[] weights, double bees, double others) {
    return Math.max(0, at(weights, bees, others) - other.at(weights, bees, others));
  }

  /**
   * Colonies over the treatment threshold, of those that live.
   *
   * @param living weights as living colonies
   * @param over whether each is over
   */
  @SuppressWarnings("ArrayRecordComponent") // read only, never compared
  record Over(double[] living, boolean[] over) implements Counted {
    @Override
    public double at(double[] weights, double bees, double others) {
      double all = 0;
      double some = 0;
      for (int i = 0; i < over.length; i++) {
        double w = weights[i] * living[i];
        all += w;
        some += over[i] ? w : 0;
      }
      return all > 0 ? some / all : 0;
    }
  }

  /**
   * Colonies that are lost between two days.
   *
   * @param survival the winter of the place
   * @param from the day on which the colony was last known to be alive
   * @param day the day by which it may be lost
   * @param then adult bees on the first day
   * @param least fewest adult bees between the two
   * @param logThen logarithms of {@code then}
   * @param logLeast logarithms of {@code least}
   */
  @SuppressWarnings("ArrayRecordComponent") // read only, never compared
  record Lost(
      Survival survival,
      LocalDate from,
      LocalDate day,
      float[] then,
      float[] least,
      double[] logThen,
      double[] logLeast)
      implements Counted {
    static Lost of(Survival survival, LocalDate from, LocalDate day, float[] then, float[] least) {
      return new Lost(survival, from, day, then, least, logs(then), logs(least));
    }

    private static double[] logs(float[] values) {
      double[] out = new double[values.length];
      for (int i = 0; i < out.length; i++) {
        out[i] = FastMath.log(values[i]);
      }
      return out;
    }

    @Override
    public double at(double[] weights, double bees, double others) {
      double before = 0;
      double after = 0;
      for (int i = 0; i < logThen.length; i++) {
        before += weights[i] * survival.enoughOfLog(logThen[i], bees);
        after += weights[i] * survival.enoughOfLog(logLeast[i], bees);
      }
      return before > 0 ? 1 - after / before * survival.spared(from, day, others) : 1;
    }

    /** A colony needs as many bees under either plan, and other causes take it under both. */
    @Override
    public double only(Counted other, double[] weights, double bees, double others) {
      if (!(other instanceof Lost there)) {
        return Counted.super.only(other, weights, bees, others);
      }
      double before = 0;
      double spared = 0;
      for (int i = 0; i < logThen.length; i++) {
        before += weights[i] * survival.enoughOfLog(logThen[i], bees);
        if (there.logLeast[i] > logLeast[i]) {
          spared +=
              weights[i]
                  * (survival.enoughOfLog(there.logLeast[i], bees)
                      - survival.enoughOfLog(logLeast[i], bees));
        }
      }
      return before > 0 ? spared / before * survival.spared(from, day, others) : 0;
    }
  }
}
