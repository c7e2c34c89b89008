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

  /** Banks that are kept even where they take more of the heap than their share. */
  private static final int FEWEST = 2;

  /** The share of the heap that banks may take: one part in so many. */
  private static final int HEAP_PARTS = 8;

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
      made = new SeasonBanks(most());
      banks = made;
    }
    return made;
  }

  private int most() {
    long bytes = SeasonBanks.bytes(colonies);
    long share = Runtime.getRuntime().maxMemory() / HEAP_PARTS;
    return bytes == 0 ? FEWEST : (int) Math.max(FEWEST, Math.min(Integer.MAX_VALUE, share / bytes));
  }
}
