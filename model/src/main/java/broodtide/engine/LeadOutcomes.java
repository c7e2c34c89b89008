package broodtide.engine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import org.apache.commons.math3.util.FastMath;

/**
 * What the mites of a lead's first day lead to on the start day, worked out over vigour, share of
 * the mites with virus, and infestation, and read in between, so that a search begins next to its
 * end. Mites from outside stand for as many on the first day as lead to the same while mites are
 * few. It is worked out when it is first asked: colonies without mites never do.
 *
 * <p>Safe to share between threads.
 */
final class LeadOutcomes {
  private static final int VIGOURS = 13;
  private static final double VIGOUR_STEP = 3.0 / (VIGOURS - 1);

  private static final double[] INFECTIVITIES = {0, 0.5, 1};

  /** Infestations of the first day, evenly spread by logarithm. */
  private static final int LEVELS = 16;

  private static final double FEW = 0.003;

  /** Infestations of the start day, evenly spread by logarithm. */
  private static final int MARKS = 80;

  private static final double FIRST_MARK = FastMath.log(0.01);
  private static final double MARK_STEP = FastMath.log(150 / 0.01) / (MARKS - 1);

  /** By infectivity, vigour, then mark: log of the first day's infestation over the start day's. */
  private final double[][][] before = new double[INFECTIVITIES.length][VIGOURS][];

  /** By vigour: infestation of the first day that mites from outside stand for. */
  private final double[] arrivals = new double[VIGOURS];

  private final double highest;
  private final Function<List<SimulatedColony>, double[]> lead;
  private volatile boolean known;

  /**
   * A table of a lead.
   *
   * @param highest most mites per 100 bees that a lead begins with
   * @param lead infestations on the start day of colonies whose infestation is that of the first
   */
  LeadOutcomes(double highest, Function<List<SimulatedColony>, double[]> lead) {
    this.highest = highest;
    this.lead = lead;
  }

  private void know() {
    if (!known) {
      work();
    }
  }

  /** Runs the colonies of the table, unless another thread has done so meanwhile. */
  private synchronized void work() {
    if (known) {
      return;
    }
    double[] first = new double[LEVELS];
    Arrays.setAll(first, k -> FEW * FastMath.pow(highest / FEW, k / (LEVELS - 1.0)));
    first[LEVELS - 1] = highest;
    List<SimulatedColony> members = new ArrayList<>();
    for (int v = 0; v < VIGOURS; v++) {
      members.add(member(FEW, v, 0, SimulatedColony.USUAL_INFECTIVITY));
      members.add(member(FEW, v, 1, SimulatedColony.USUAL_INFECTIVITY));
      for (double infectivity : INFECTIVITIES) {
        for (double infestation : first) {
          members.add(member(infestation, v, 0, infectivity));
        }
      }
    }
    double[] then = lead.apply(members);
    int at = 0;
    for (int v = 0; v < VIGOURS; v++) {
      arrivals[v] = FEW * Math.max(0, then[at + 1] / then[at] - 1);
      at += 2;
      for (double[][] byVigour : before) {
        byVigour[v] = marks(first, Arrays.copyOfRange(then, at, at + LEVELS));
        at += LEVELS;
      }
    }
    known = true;
  }

  private static SimulatedColony member(
      double infestation, int vigour, double immigration, double infectivity) {
    return new SimulatedColony(
        1, 1, infestation, vigour * VIGOUR_STEP, immigration, infectivity, List.of());
  }

  /** Reads what was run the other way round: by what it led to. */
  private static double[] marks(double[] first, double[] then) {
    int rising = 1;
    // where more mites on the first day leave fewer on the last, colonies have broken down
    while (rising < then.length && then[rising] > then[rising - 1]) {
      rising++;
    }
    double[] to = new double[rising];
    double[] ratio = new double[rising];
    for (int k = 0; k < rising; k++) {
      to[k] = FastMath.log(then[k]);
      ratio[k] = FastMath.log(first[k]) - to[k];
    }
    double[] out = new double[MARKS];
    if (rising < 3) {
      Arrays.fill(out, ratio[0]);
      return out;
    }
    PolynomialSplineFunction between = new SplineInterpolator().interpolate(to, ratio);
    for (int k = 0; k < MARKS; k++) {
      double at = FIRST_MARK + k * MARK_STEP;
      out[k] = between.value(Math.min(to[rising - 1], Math.max(to[0], at)));
    }
    return out;
  }

  /**
   * {@return mites per 100 bees on the first day that lead to an infestation, above 0}
   *
   * @param wanted mites per 100 bees on the start day, above 0
   * @param vigour factor on the mites' daughters, 0 to 3
   * @param infectivity share of the mites that carry virus, 0 to 1
   */
  double firstDay(double wanted, double vigour, double infectivity) {
    know();
    double mark = (FastMath.log(wanted) - FIRST_MARK) / MARK_STEP;
    int k = below(mark, MARKS);
    double[] byMark = weights(Math.max(0, Math.min(MARKS - 1.0, mark)) - k);
    int v = below(vigour / VIGOUR_STEP, VIGOURS);
    double[] byVigour = weights(vigour / VIGOUR_STEP - v);
    double[] byInfectivity = {
      (1 - infectivity) * (1 - 2 * infectivity),
      4 * infectivity * (1 - infectivity),
      infectivity * (2 * infectivity - 1)
    };
    double log = 0;
    for (int h = 0; h < byInfectivity.length; h++) {
      for (int i = 0; i < byVigour.length; i++) {
        double[] row = before[h][v - 1 + i];
        double sum = 0;
        for (int j = 0; j < byMark.length; j++) {
          sum += byMark[j] * row[k - 1 + j];
        }
        log += byInfectivity[h] * byVigour[i] * sum;
      }
    }
    return wanted * FastMath.exp(log);
  }

  /**
   * {@return mites per 100 bees on the first day that mites from outside stand for}
   *
   * @param vigour factor on the mites' daughters, 0 to 3
   */
  double arrivals(double vigour) {
    know();
    int v = below(vigour / VIGOUR_STEP, VIGOURS);
    double[] byVigour = weights(vigour / VIGOUR_STEP - v);
    double sum = 0;
    for (int i = 0; i < byVigour.length; i++) {
      sum += byVigour[i] * arrivals[v - 1 + i];
    }
    return Math.max(0, sum);
  }

  /** The second of the four places that a value is read from. */
  private static int below(double at, int places) {
    return (int) Math.max(1, Math.min(places - 3.0, Math.floor(at)));
  }

  /** Weights of the cubic through four even places, of which the second is at 0. */
  private static double[] weights(double t) {
    return new double[] {
      -t * (t - 1) * (t - 2) / 6,
      (t + 1) * (t - 1) * (t - 2) / 2,
      -(t + 1) * t * (t - 2) / 2,
      (t + 1) * t * (t - 1) / 6
    };
  }
}
