package broodtide.mite;

/**
 * Closed forms for mother mites sharing brood cells, with m mothers per cell on average, clumped as
 * a negative binomial of size K (Poisson as K grows). Clumping: Donze et al. 1996; Floris et al.
 * 2020.
 *
 * <p>With k mothers in a cell, daughters per mother fall as (1 - c)^(k - 1). The generating
 * function of the negative binomial, G(s) = (1 + m (1 - s) / K)^-K, then gives every mean below
 * exactly.
 */
public final class CellLoad {
  private CellLoad() {}

  /**
   * {@return daughters per mother, relative to a mother alone in her cell}
   *
   * @param mothersPerCell m, zero or more
   * @param crowding c, 0 to 1
   * @param clumping K, above 0; infinity gives Poisson
   */
  public static double fecundity(double mothersPerCell, double crowding, double clumping) {
    double load = crowding * mothersPerCell;
    return Double.isInfinite(clumping)
        ? Math.exp(-load)
        : Math.pow(1 + load / clumping, -(clumping + 1));
  }

  /**
   * {@return share of cells that hold no mother} Arguments as in {@link #fecundity}.
   *
   * @param mothersPerCell m, zero or more
   * @param clumping K, above 0; infinity gives Poisson
   */
  public static double empty(double mothersPerCell, double clumping) {
    return untouched(mothersPerCell, 1, clumping);
  }

  /**
   * {@return share of bees that emerge alive when each mother kills the bee with a given chance}
   *
   * @param chance chance per mother, 0 to 1; 1 gives the share of empty cells
   * @param mothersPerCell m, zero or more
   * @param clumping K, above 0; infinity gives Poisson
   */
  public static double untouched(double mothersPerCell, double chance, double clumping) {
    double load = chance * mothersPerCell;
    return Double.isInfinite(clumping) ? Math.exp(-load) : Math.pow(1 + load / clumping, -clumping);
  }

  /**
   * {@return share of cells whose bee emerges alive and overtly infected} A bee is infected by a
   * mother that carries virus; it emerges as often as any other bee of an infested cell.
   *
   * @param mothersPerCell m, zero or more
   * @param chance chance per mother of killing the bee, 0 to 1
   * @param infectivity share of mothers that carry virus, 0 to 1
   * @param clumping K, above 0; infinity gives Poisson
   */
  public static double overt(
      double mothersPerCell, double chance, double infectivity, double clumping) {
    double clean = empty(mothersPerCell, clumping);
    double alive = untouched(mothersPerCell, chance, clumping);
    double infected = 1 - untouched(mothersPerCell, infectivity, clumping);
    return clean < 1 ? infected * (alive - clean) / (1 - clean) : 0;
  }
}
