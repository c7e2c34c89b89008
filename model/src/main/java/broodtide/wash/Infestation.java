package broodtide.wash;

/**
 * What one wash says of a colony's infestation, in mites per 100 adult bees.
 *
 * <p>Three readings of the same count, each honest about something else:
 *
 * <ul>
 *   <li>{@link #asCounted()}: the count as it is, with the chance of sampling alone;
 *   <li>{@link #asAlcoholWash()}: what an alcohol wash of brood-nest or mixed bees would have
 *       shown, the reading to hold against published thresholds, nearly all of which are counts of
 *       that kind;
 *   <li>{@link #inColony()}: all mites on the adult bees of the colony, corrected for recovery and
 *       for the frame, with the doubt about both: the reading a model of the colony needs.
 * </ul>
 */
public final class Infestation {
  private final Wash wash;
  private final HalfCup cup;

  private Infestation(Wash wash, HalfCup cup) {
    this.wash = wash;
    this.cup = cup;
  }

  /**
   * Reads a wash; bees that were not counted are taken from {@link HalfCup#usual()}.
   *
   * @param wash the wash
   * @return the reading
   */
  public static Infestation of(Wash wash) {
    return of(wash, HalfCup.usual());
  }

  /**
   * Reads a wash with another idea of what a half cup holds.
   *
   * @param wash the wash
   * @param cup stands in for the bees when they were not counted
   * @return the reading
   */
  public static Infestation of(Wash wash, HalfCup cup) {
    return new Infestation(wash, cup);
  }

  /** {@return the wash} */
  public Wash wash() {
    return wash;
  }

  /** {@return mites found per 100 bees, as counted} */
  public double perHundred() {
    return 100 * wash.mites() / bees();
  }

  /**
   * {@return exact interval of the count in mites per 100 bees: Clopper-Pearson when the bees were
   * counted; Garwood over the assumed bees when not, which leaves out the doubt about the half cup
   * ({@link #asCounted()} has it in)}
   *
   * @param level share of such intervals that hold the truth, for example 0.95
   */
  public Interval exact(double level) {
    if (wash.beesAssumed()) {
      return Interval.poisson(wash.mites(), level).times(100 / bees());
    }
    return Interval.binomial(wash.mites(), wash.bees().getAsInt(), level).times(100);
  }

  /**
   * {@return belief about the rate that this method shows on such bees: sampling and the half cup
   * only}
   */
  public RatePosterior asCounted() {
    return belief(1, samplingVariance(), false);
  }

  /**
   * {@return belief about what an alcohol wash would have shown} Other methods are scaled by their
   * recovery over that of alcohol; honey frames are scaled to the brood nest; mixed and brood
   * frames are left as they are (choice).
   */
  public RatePosterior asAlcoholWash() {
    boolean other = wash.method() != WashMethod.ALCOHOL;
    boolean honey = wash.frame() == Frame.HONEY;
    double known = other ? 1 / WashMethod.ALCOHOL.recovery().mean() : 1;
    double variance = samplingVariance();
    if (honey) {
      known *= Frame.HONEY.factor().mean() / Frame.BROOD_CENTRE.factor().mean();
      variance += logVariance(Frame.HONEY.factor().mean(), Frame.HONEY.factor().sd());
    }
    return belief(known, variance, other);
  }

  /** {@return belief about the mites per 100 adult bees of the whole colony} */
  public RatePosterior inColony() {
    Factor frame = wash.frame().factor();
    return belief(frame.mean(), samplingVariance() + logVariance(frame.mean(), frame.sd()), true);
  }

  private double bees() {
    return wash.beesAssumed() ? cup.bees() : wash.beesOrAssumed();
  }

  private double samplingVariance() {
    return wash.beesAssumed() ? logVariance(cup.bees(), cup.sd()) : 0;
  }

  /** Lognormal factors multiply to one whose log variance is the sum of theirs. */
  private RatePosterior belief(double known, double logVariance, boolean recovery) {
    Divisor divisor = Divisor.known(bees() * known);
    if (recovery) {
      Factor share = wash.method().recovery();
      divisor = divisor.timesShare(share.mean(), share.sd());
    }
    if (logVariance > 0) {
      divisor = divisor.timesLognormal(logVariance);
    }
    return new RatePosterior(wash.mites(), divisor);
  }

  private static double logVariance(double mean, double sd) {
    double cv = sd / mean;
    return Math.log1p(cv * cv);
  }
}
