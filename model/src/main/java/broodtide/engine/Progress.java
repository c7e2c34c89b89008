package broodtide.engine;

/** Is told how far long work has come. May be called from any thread. */
@FunctionalInterface
public interface Progress {
  /** Tells nobody. */
  Progress NONE = (done, all) -> {};

  /**
   * Some work is done.
   *
   * @param done parts done so far
   * @param all parts in all
   */
  void at(int done, int all);
}
