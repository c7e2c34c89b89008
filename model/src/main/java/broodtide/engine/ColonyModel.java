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
  /**
   * {@return default rates, average stock and no immigration in a climate}
   *
   * @param climate the year of the place
   */
  public static ColonyModel in(Climate climate) {
    return new ColonyModel(
        climate, BeeRates.defaults(), MiteRates.defaults(), StockTraits.AVERAGE, Immigration.NONE);
  }

  /**
   * {@return the same in another climate}
   *
   * @param other what takes the place of the one there was
   */
  public ColonyModel with(Climate other) {
    return new ColonyModel(other, bees, mites, stock, immigration);
  }

  /**
   * {@return the same with other immigration}
   *
   * @param other what takes the place of the one there was
   */
  public ColonyModel with(Immigration other) {
    return new ColonyModel(climate, bees, mites, stock, other);
  }

  /**
   * {@return the same with other stock}
   *
   * @param other what takes the place of the one there was
   */
  public ColonyModel with(StockTraits other) {
    return new ColonyModel(climate, bees, mites, other, immigration);
  }

  /**
   * {@return the same with other bees}
   *
   * @param other what takes the place of the one there was
   */
  public ColonyModel with(BeeRates other) {
    return new ColonyModel(climate, other, mites, stock, immigration);
  }

  /**
   * {@return the same with other mites}
   *
   * @param other what takes the place of the one there was
   */
  public ColonyModel with(MiteRates other) {
    return new ColonyModel(climate, bees, other, stock, immigration);
  }
}
