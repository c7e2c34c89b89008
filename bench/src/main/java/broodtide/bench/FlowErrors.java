package broodtide.bench;

import broodtide.engine.Quantity;
import broodtide.engine.Trajectory;

/** How far two runs of one season lie apart. */
final class FlowErrors {
  private FlowErrors() {}

  /** The largest difference of adults and of mites on any day, as a share of one plus the size. */
  static double largest(Trajectory run, Trajectory reference) {
    double worst = 0;
    for (Quantity q : new Quantity[] {Quantity.ADULTS, Quantity.MITES}) {
      double[] a = run.of(q);
      double[] b = reference.of(q);
      for (int t = 0; t < a.length; t++) {
        worst = Math.max(worst, Math.abs(a[t] - b[t]) / (1 + Math.abs(b[t])));
      }
    }
    return worst;
  }
}
