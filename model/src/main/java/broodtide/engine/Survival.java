package broodtide.engine;

import broodtide.season.Climate;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.util.FastMath;

/**
 * The chance that a colony is alive, the one meaning of alive and lost in the program. Alive at a
 * day is a colony whose fewest adults since its last wash were enough, and that no other cause took
 * in the share of winter that has passed:
 *
 * <pre>
 * P = Phi((ln m - ln T - .8 u) / .4) (1 - o)^(s(t) - s(last wash)),   logit o = logit .10 + 1.2 z
 * </pre>
 *
 * with u and z, the luck of a yard and its winter, averaged over. Both are standard normal and
 * independent; the mean over u is a normal chance again, that over z is taken at {@value #POINTS}
 * Gauss-Hermite points. Results are estimates.
 */
public final class Survival {
  /** Points of the quadrature over other losses. */
  private static final int POINTS = 15;

  /**
   * Below this share of winter bees at the height of their season, nothing published says what
   * autumn and winter do to a colony. Choice.
   */
  private static final double WINTERS_FROM = 0.5;

  /** Half the width of the table of the normal distribution, in standard deviations. */
  private static final double WIDE = 8;

  /** Steps of the table per standard deviation, at which straight lines err by 5e-7 at most. */
  private static final int STEPS = 256;

  /** The table, since it is looked up for thousands of colonies on hundreds of days. */
  private static final double[] NORMAL = table();

  private final Climate climate;
  private final int winterDays;
  private final double logFewest;
  private final double spread;
  private final Wintering wintering;
  private final double[] spared = new double[POINTS];
  private final double[] weights = new double[POINTS];

  private Survival(ColonyModel model, Wintering w) {
    climate = model.climate();
    wintering = w;
    winterDays = hasWinter(climate) ? winterDays(model) : 0;
    logFewest = FastMath.log(w.fewestBees());
    spread = FastMath.hypot(w.spread(), w.yardSpread());
    GaussIntegrator points = new GaussIntegratorFactory().hermite(POINTS);
    double logit = FastMath.log(w.otherLosses() / (1 - w.otherLosses()));
    double sum = 0;
    for (int i = 0; i < POINTS; i++) {
      double z = FastMath.sqrt(2) * points.getPoint(i);
      spared[i] = -FastMath.log1p(FastMath.exp(logit + w.otherSpread() * z));
      weights[i] = points.getWeight(i);
      sum += weights[i];
    }
    for (int i = 0; i < POINTS; i++) {
      weights[i] /= sum;
    }
  }

  /**
   * {@return chances of life in a place, by the default {@link Wintering}}
   *
   * @param model the place and the bees
   */
  public static Survival in(ColonyModel model) {
    return in(model, Wintering.defaults());
  }

  /**
   * {@return chances of life in a place}
   *
   * @param model the place and the bees
   * @param wintering what a colony needs
   */
  public static Survival in(ColonyModel model, Wintering wintering) {
    return new Survival(model, wintering);
  }

  /**
   * {@return whether a place has a winter whose losses can be told: one for which its colonies
   * raise winter bees mostly}
   *
   * @param climate the year of the place
   */
  public static boolean hasWinter(Climate climate) {
    return climate.winterShare().peak() >= WINTERS_FROM;
  }

  private static int winterDays(ColonyModel model) {
    LocalDate end = model.climate().winterBees().to().atYear(2001);
    return Math.toIntExact(ChronoUnit.DAYS.between(end, SpringLow.after(model, end).day()));
  }

  /**
   * {@return winters passed by a day since a day long ago, a share of one counting as it passes: it
   * rises from the last day on which the climate raises winter bees to the low in spring; 0
   * throughout where there is no winter}
   *
   * @param day the day
   */
  double wintersPassed(LocalDate day) {
    if (winterDays == 0) {
      return 0;
    }
    LocalDate end = climate.winterBees().to().atYear(day.getYear());
    if (end.isAfter(day)) {
      end = climate.winterBees().to().atYear(day.getYear() - 1);
    }
    double share = ChronoUnit.DAYS.between(end, day) / (double) winterDays;
    return end.getYear() + Math.min(1, share);
  }

  /**
   * {@return chance that so few bees are enough, 0 to 1}
   *
   * @param adults adult bees, zero or more
   */
  public double enough(double adults) {
    return adults <= 0 ? 0 : normal((FastMath.log(adults) - logFewest) / spread);
  }

  /**
   * {@return chance that so few bees are enough where the luck of the yard and winter is known, 0
   * to 1}
   *
   * @param adults adult bees, zero or more
   * @param luck standard deviations by which more bees are needed than in the middle yard
   */
  public double enough(double adults, double luck) {
    return enoughOfLog(FastMath.log(Math.max(0, adults)), luck);
  }

  /**
   * {@return the same by the logarithm of the bees, for who asks of many yards}
   *
   * @param logAdults natural logarithm of the adult bees, minus infinity for none
   * @param luck standard deviations by which more bees are needed than in the middle yard
   */
  public double enoughOfLog(double logAdults, double luck) {
    double needed = logFewest + wintering.yardSpread() * luck;
    return normal((logAdults - needed) / wintering.spread());
  }

  /** The standard normal distribution, from the table. */
  private static double normal(double z) {
    double at = (z + WIDE) * STEPS;
    if (at <= 0) {
      return 0;
    }
    int below = (int) Math.min(at, NORMAL.length - 2.0);
    double share = Math.min(1, at - below);
    return NORMAL[below] + share * (NORMAL[below + 1] - NORMAL[below]);
  }

  private static double[] table() {
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    double[] out = new double[(int) (2 * WIDE * STEPS) + 1];
    for (int i = 1; i < out.length; i++) {
      out[i] = normal.cumulativeProbability(i / (double) STEPS - WIDE);
    }
    return out;
  }

  /**
   * {@return chance that no other cause takes a colony between two days, above 0, at most 1}
   *
   * @param from the first day
   * @param to the last day, not before {@code from}
   */
  public double spared(LocalDate from, LocalDate to) {
    double passed = wintersPassed(to) - wintersPassed(from);
    if (passed <= 0) {
      return 1;
    }
    double mean = 0;
    for (int i = 0; i < POINTS; i++) {
      mean += weights[i] * FastMath.exp(passed * spared[i]);
    }
    return mean;
  }

  /**
   * {@return chance that no other cause takes a colony between two days where the luck of the yard
   * and winter is known, above 0, at most 1}
   *
   * @param from the first day
   * @param to the last day, not before {@code from}
   * @param luck standard deviations by which more are taken than in the middle yard, in logits
   */
  public double spared(LocalDate from, LocalDate to, double luck) {
    double odds = wintering.otherLosses() / (1 - wintering.otherLosses());
    double taken = odds * FastMath.exp(wintering.otherSpread() * luck);
    return FastMath.pow(1 + taken, -Math.max(0, wintersPassed(to) - wintersPassed(from)));
  }

  /**
   * Chance that a colony which was alive on one day is alive on another.
   *
   * @param adults its adults on the first day, above 0
   * @param least its fewest adults from the first day to the other, at most {@code adults}
   * @param from the first day
   * @param to the other day
   * @return 0 to 1
   */
  public double alive(double adults, double least, LocalDate from, LocalDate to) {
    double then = enough(adults);
    return then > 0 ? enough(least) * spared(from, to) / then : 0;
  }
}
