package broodtide.fit;

import broodtide.engine.SimulatedColony;
import broodtide.measure.Tag;
import java.util.ArrayList;
import java.util.List;

/**
 * What is believed of a colony before any wash.
 *
 * @param infestation mites per 100 adult bees on the first day
 * @param vigour factor on the mites' daughters
 * @param strength factor on laying
 * @param startSize bees and brood on the first day, relative to what the standard year and the
 *     colony's strength give: the two are multiplied
 * @param immigration factor on the mites that come from outside
 * @param dispersion size of the negative binomial of washes around the colony's mean
 * @param success factor on the hazards of each miticide course
 * @param infectivity share of the mites that carry virus, which washes cannot teach
 */
public record Priors(
    Prior infestation,
    Prior vigour,
    Prior strength,
    Prior startSize,
    Prior immigration,
    Prior dispersion,
    Prior success,
    Prior infectivity) {

  /**
   * Unknowns of every colony that washes can teach. In a particle they come first; then one for the
   * success of each miticide course; infectivity last.
   */
  public static final int COMMON = 6;

  /** {@return the defaults, each with its source} */
  public static Priors defaults() {
    return new Priors(
        new Prior(
            "mites per 100 adult bees on the first day",
            1.0,
            1.3,
            300,
            Tag.CHOICE,
            "wide on purpose: 0.1 to 13 in nineteen colonies of twenty"),
        new Prior(
            "factor on the mites' daughters",
            1.0,
            0.3,
            3,
            Tag.DERIVED,
            "field washes forecast from earlier ones stray as far; growth varies by about 30 %"
                + " between years, Harris 2003; stock alone, 1.7 and 9.6 fold a summer in Ontario"
                + " (PMC7761820), would give 0.18"),
        new Prior(
            "factor on laying",
            1.0,
            0.20,
            3,
            Tag.CHOICE,
            "colonies of one apiary differ by about a fifth; year-to-year growth varies by about"
                + " 30 % (Harris 2003)"),
        new Prior(
            "size on the first day, relative to a colony of its strength",
            1.0,
            0.30,
            5,
            Tag.CHOICE,
            "choice; notes of frames of bees narrow it"),
        new Prior(
            "factor on mites from outside",
            1.0,
            0.65,
            100,
            Tag.DERIVED,
            "1.6 to 13.7 mites a day, Greatti et al. 1992, taken as nine colonies in ten; 2.5 to"
                + " 10.9 and 0.7 to 2.3, Frey & Rosenkranz 2014, are within it"),
        new Prior(
            "size of the negative binomial of washes around the colony's mean",
            10,
            0.7,
            1e6,
            Tag.CHOICE,
            "one scoop is nearly binomial, but scoops of a colony differ by frame and day; choice"),
        new Prior(
            "factor on the hazards of a miticide",
            1.0,
            0.65,
            5,
            Tag.DERIVED,
            "formic trials, 73 +- 12 %, 49 +- 15 % and 81 +- 16 %, Pietropaoli & Formato 2022, as"
                + " hazards -log(1 - efficacy): their logarithms spread by 0.47 between the three"
                + " and by 0.46 within each"),
        new Prior(
            "share of mites that carry virus",
            SimulatedColony.USUAL_INFECTIVITY,
            1,
            1,
            Prior.Scale.LOGIT,
            Tag.CHOICE,
            "choice; yards with the same washes differ through their viruses, and washes cannot"
                + " tell them apart"));
  }

  /** {@return the unknowns of every colony that washes can teach, in the order of a particle} */
  public List<Prior> common() {
    return List.of(infestation, vigour, strength, startSize, immigration, dispersion);
  }

  /**
   * {@return every unknown of a colony with a number of miticide courses, in the order of a
   * particle}
   *
   * @param courses miticide courses, 0 or more
   */
  public List<Prior> unknowns(int courses) {
    List<Prior> all = new ArrayList<>(common());
    for (int c = 0; c < courses; c++) {
      all.add(success);
    }
    all.add(infectivity);
    return all;
  }

  /** The colony that a particle in standard normal units stands for. */
  SimulatedColony member(double[] z) {
    List<Double> successes = new ArrayList<>();
    int last = z.length - 1;
    for (int i = COMMON; i < last; i++) {
      successes.add(success.at(z[i]));
    }
    double lays = within(strength.at(z[2]), 0.05);
    return new SimulatedColony(
        lays,
        Math.min(5, within(startSize.at(z[3]) * lays, 0.01)),
        infestation.at(z[0]),
        vigour.at(z[1]),
        immigration.at(z[4]),
        infectivity.at(z[last]),
        successes);
  }

  private static double within(double value, double least) {
    return Math.max(least, value);
  }

  /** Size of the negative binomial of washes that a particle stands for. */
  double dispersion(double[] z) {
    return dispersion.at(z[5]);
  }
}
