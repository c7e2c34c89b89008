package broodtide.engine;

import broodtide.colony.BeeRates;
import broodtide.mite.Immigration;
import broodtide.mite.MiteRates;
import broodtide.mite.StockTraits;
import broodtide.season.Climate;

/**
 * Everything that sets the rates of a colony and its mites, whatever engine runs them.
 *
 * @param climate the year
 * @param bees rates of the bees
 * @param mites rates of the mites
 * @param stock traits of the stock
 * @param immigration mites from outside
 */
public record ColonyModel(
    Climate climate, BeeRates bees, MiteRates mites, StockTraits stock, Immigration immigration) {
  /** Default rates, average stock and no immigration in a climate. */
  public static ColonyModel in(Climate climate) {
    return new ColonyModel(
        climate, BeeRates.defaults(), MiteRates.defaults(), StockTraits.AVERAGE, Immigration.NONE);
  }

  /** The same in another climate. */
  public ColonyModel with(Climate other) {
    return new ColonyModel(other, bees, mites, stock, immigration);
  }

  /** The same with other immigration. */
  public ColonyModel with(Immigration other) {
    return new ColonyModel(climate, bees, mites, stock, other);
  }

  /** The same with other stock. */
  public ColonyModel with(StockTraits other) {
    return new ColonyModel(climate, bees, mites, other, immigration);
  }

  /** The same with other bees. */
  public ColonyModel with(BeeRates other) {
    return new ColonyModel(climate, other, mites, stock, immigration);
  }

  /** The same with other mites. */
  public ColonyModel with(MiteRates other) {
    return new ColonyModel(climate, bees, other, stock, immigration);
  }
}
