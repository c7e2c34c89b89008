package broodtide.cluster;

import broodtide.fit.SeasonBanks;
import java.io.Serializable;
import org.jspecify.annotations.Nullable;

/**
 * Banks of seasons that all tasks of an executor share. It is broadcast empty, so each executor has
 * one of it: a bank is made where its first hive is, and no bank travels.
 */
final class SharedSeasons implements Serializable {
  private static final long serialVersionUID = 1;

  private final int colonies;
  private transient @Nullable SeasonBanks banks;

  /**
   * No bank yet.
   *
   * @param colonies simulated colonies of each hive
   */
  SharedSeasons(int colonies) {
    this.colonies = colonies;
  }

  /** The banks of this process. */
  synchronized SeasonBanks here() {
    SeasonBanks made = banks;
    if (made == null) {
      made = SeasonBanks.inHeap(colonies);
      banks = made;
    }
    return made;
  }
}
