package broodtide.fit;

import broodtide.engine.ColonyView;
import broodtide.engine.MiteLedger;
import broodtide.engine.Scenario;
import broodtide.wash.BoardCount;
import java.util.List;
import org.apache.commons.math3.util.FastMath;

/**
 * The likelihood of mites on boards under one colony. A board is a negative binomial around the
 * mites that died while it lay, times what boards of this colony show of them; that factor is one
 * for all boards of the colony, so that many boards do not make it look well known. It is averaged
 * over.
 */
final class BoardLikelihood {
  /** Nodes of the trapezoid rule over the factor's logarithm, in standard deviations. */
  private static final double STEP = 0.5;

  private static final int STEPS = 7;

  private final int[] mites;
  private final int[] from;
  private final int[] to;
  private final int last;

  /** Factors, and the logarithm of their weights, which add up to 1. */
  private final double[] factor = new double[2 * STEPS + 1];

  private final double[] logWeight = new double[2 * STEPS + 1];

  BoardLikelihood(Scenario past, List<BoardCount> boards) {
    mites = boards.stream().mapToInt(BoardCount::mites).toArray();
    from = boards.stream().mapToInt(b -> SeasonPosterior.day(past, b.from())).toArray();
    to = boards.stream().mapToInt(b -> SeasonPosterior.day(past, b.date())).toArray();
    int latest = -1;
    for (int day : to) {
      latest = Math.max(latest, day);
    }
    last = latest;
    double sum = 0;
    for (int i = 0; i < factor.length; i++) {
      double z = (i - STEPS) * STEP;
      factor[i] = BoardCount.SHOWN * FastMath.exp(BoardCount.LOG_SD * z);
      sum += FastMath.exp(-z * z / 2);
    }
    for (int i = 0; i < factor.length; i++) {
      double z = (i - STEPS) * STEP;
      logWeight[i] = -z * z / 2 - FastMath.log(sum);
    }
  }

  /** The day after which nothing is left to look at; -1 without boards. */
  int last() {
    return last;
  }

  /** What is remembered of one block of colonies while it runs. */
  final class Tally {
    private final double[][] died;

    Tally(int lanes) {
      died = new double[mites.length][lanes];
    }

    /** Looks at a day; on the last one the likelihood is added to {@code out}. */
    void see(int day, ColonyView view, int lanes, int first, double[] sizes, double[] out) {
      for (int b = 0; b < mites.length; b++) {
        if (day == from[b] || day == to[b]) {
          for (int l = 0; l < lanes; l++) {
            double dead = dead(view.ledger(l));
            died[b][l] = day == from[b] ? dead : dead - died[b][l];
          }
        }
      }
      if (day == last) {
        for (int l = 0; l < lanes; l++) {
          out[first + l] += logLikelihood(l, sizes[first + l]);
        }
      }
    }

    private double logLikelihood(int lane, double dispersion) {
      double size = 1 / (1 / dispersion + BoardCount.BETWEEN_BOARDS * BoardCount.BETWEEN_BOARDS);
      double[] log = new double[factor.length];
      double most = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < log.length; i++) {
        log[i] = logWeight[i];
        for (int b = 0; b < mites.length; b++) {
          log[i] += WashModel.logProbability(mites[b], factor[i] * died[b][lane], size);
        }
        most = Math.max(most, log[i]);
      }
      if (most == Double.NEGATIVE_INFINITY) {
        return most;
      }
      double sum = 0;
      for (double each : log) {
        sum += FastMath.exp(each - most);
      }
      return most + FastMath.log(sum);
    }
  }

  private static double dead(MiteLedger ledger) {
    return ledger.diedOnBees() + ledger.diedInCells();
  }
}
