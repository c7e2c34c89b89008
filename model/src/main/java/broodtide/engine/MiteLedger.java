package broodtide.engine;

/**
 * Where mites came from and went, since the start. In mites.
 *
 * @param start mites at the start
 * @param daughters mated daughters made
 * @param immigrants mites from outside
 * @param diedOnBees natural deaths on adult bees
 * @param diedInCells mothers that did not come back from cells, and daughters lost at emergence
 * @param killed killed by miticides, on bees and in cells
 * @param cutOut cut out with drone comb
 * @param movedAway moved away with bees and brood
 * @param end mites now
 */
public record MiteLedger(
    double start,
    double daughters,
    double immigrants,
    double diedOnBees,
    double diedInCells,
    double killed,
    double cutOut,
    double movedAway,
    double end) {
  /** {@return everything that came in} */
  public double in() {
    return start + daughters + immigrants;
  }

  /** {@return everything that went out} */
  public double out() {
    return diedOnBees + diedInCells + killed + cutOut + movedAway;
  }

  /**
   * {@return what does not add up, as a share of everything that came in; zero but for rounding}
   */
  public double imbalance() {
    double in = in();
    return in > 0 ? Math.abs(in - out() - end) / in : Math.abs(out() + end);
  }
}
