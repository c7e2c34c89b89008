package broodtide.words;

import broodtide.engine.Survival;
import broodtide.season.Climate;
import java.util.Optional;

/** What is left out because nothing published carries it. */
public final class NotShown {
  private NotShown() {}

  /**
   * {@return what of autumn and winter is not shown for a climate; empty when all is}
   *
   * @param climate the year of the place
   */
  public static Optional<String> inWinter(Climate climate) {
    return Survival.hasWinter(climate)
        ? Optional.empty()
        : Optional.of(
            "Winter losses, and mites after "
                + (climate.southern() ? "April" : "October")
                + ", are not shown for this climate: there are no published data where few"
                + " bees become winter bees.");
  }
}
