package broodtide.fit;

import broodtide.engine.SeasonChange;
import broodtide.engine.SimulatedColony;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.util.FastMath;

/** A colony while its unknowns are set one by one. */
final class ColonyDraw {
  /**
   * Correlation of growth to come with growth so far, on the log scale. Choice: 0.5 to 0.9 in one
   * trial, 0 elsewhere.
   */
  static final double GROWTH_CORRELATION = 0.25;

  private static final double OWN_GROWTH = Math.sqrt(1 - GROWTH_CORRELATION * GROWTH_CORRELATION);
  private static final double LEAST_LAYING = 0.05;
  private static final double LEAST_SIZE = 0.01;
  private static final double LARGEST_SIZE = 5;
  private static final double LARGEST_VIGOUR = 3;

  /** Middle of what is believed of the daughters. */
  private final double usualReproduction;

  double infestation;
  double laying;
  double startSize;
  double overdispersion;
  double infectivity;

  /** What growth to come does not share with growth so far; 1 before it is set. */
  double growthToCome = 1;

  private double ahead;
  private int aheadOf = -1;

  /** Number of the season that is being set; plays no part in what is the same in all. */
  int season;

  /** By number of the season of the bees, see {@link BeeYears}. */
  final BySeason reproduction = new BySeason();

  final BySeason reinvasion = new BySeason();

  /** The same; what is missing counts as usual. */
  final BySeason lateReinvasion = new BySeason();

  /** One for each miticide course. */
  final List<Double> efficacy = new ArrayList<>();

  /** A factor for each season; 1 where none was set. */
  static final class BySeason {
    private double[] factors = {};

    void put(int season, double factor) {
      int known = factors.length;
      if (season >= known) {
        factors = Arrays.copyOf(factors, season + 1);
        Arrays.fill(factors, known, season, 1);
      }
      factors[season] = factor;
    }

    private double of(int season) {
      return season < factors.length ? factors[season] : 1;
    }
  }

  ColonyDraw(double usualReproduction) {
    this.usualReproduction = usualReproduction;
  }

  /** The colony over some years; its size on the first day follows its laying. */
  SimulatedColony colony(BeeYears years) {
    double lays = Math.max(LEAST_LAYING, laying);
    double size = Math.min(LARGEST_SIZE, Math.max(LEAST_SIZE, startSize * lays));
    return new SimulatedColony(
        lays,
        size,
        infestation,
        reproduction.of(0),
        reinvasion.of(0),
        infectivity,
        efficacy,
        changes(years));
  }

  private List<SeasonChange> changes(BeeYears years) {
    aheadOf = -1;
    List<SeasonChange> out = new ArrayList<>(years.stretches().size());
    double growth = 1;
    double arrivals = 1;
    for (BeeYears.Stretch s : years.stretches()) {
      double nextGrowth = growth(s, years.seen()) / reproduction.of(0);
      double nextArrivals = arrivals(s) / reinvasion.of(0);
      if (nextGrowth != growth || nextArrivals != arrivals) {
        growth = nextGrowth;
        arrivals = nextArrivals;
        out.add(new SeasonChange(s.from(), growth, arrivals));
      }
    }
    return out;
  }

  private double growth(BeeYears.Stretch s, int seen) {
    return s.ahead() && s.season() <= seen ? growthAhead(s.season()) : reproduction.of(s.season());
  }

  /** Growth of a season from the last wash on; asked for more than once of the same season. */
  private double growthAhead(int season) {
    if (season != aheadOf) {
      double own = reproduction.of(season);
      double kept = FastMath.pow(own / usualReproduction, GROWTH_CORRELATION);
      ahead =
          Math.min(
              LARGEST_VIGOUR, usualReproduction * kept * FastMath.pow(growthToCome, OWN_GROWTH));
      aheadOf = season;
    }
    return ahead;
  }

  private double arrivals(BeeYears.Stretch s) {
    double usual = reinvasion.of(s.season());
    return s.late() ? usual * lateReinvasion.of(s.season()) : usual;
  }
}
