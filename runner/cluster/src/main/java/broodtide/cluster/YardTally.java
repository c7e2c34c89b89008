package broodtide.cluster;

import java.io.Serializable;

/**
 * What all yards came to.
 *
 * @param counts washes and boards that were used
 * @param hives hives of the sheet
 * @param yards their yards
 * @param acid whether a plan that the sheet names uses an acid
 */
record YardTally(long counts, long hives, long yards, boolean acid) implements Serializable {
  static final YardTally NONE = new YardTally(0, 0, 0, false);

  YardTally and(YardResult yard) {
    int lines = yard.lines().size();
    return and(new YardTally(yard.counts(), lines, lines == 0 ? 0 : 1, yard.acid()));
  }

  YardTally and(YardTally other) {
    return new YardTally(
        counts + other.counts, hives + other.hives, yards + other.yards, acid || other.acid);
  }
}
