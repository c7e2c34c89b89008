package broodtide.fit;

import broodtide.engine.SimulatedColony;
import java.util.ArrayList;
import java.util.List;

/** A colony while its unknowns are set one by one. */
final class ColonyDraw {
  private static final double LEAST_LAYING = 0.05;
  private static final double LEAST_SIZE = 0.01;
  private static final double LARGEST_SIZE = 5;

  double infestation;
  double reproduction;
  double laying;
  double startSize;
  double reinvasion;
  double overdispersion;
  double infectivity;
  final List<Double> efficacy = new ArrayList<>();

  /** The colony; its size on the first day follows its laying. */
  SimulatedColony colony() {
    double lays = Math.max(LEAST_LAYING, laying);
    double size = Math.min(LARGEST_SIZE, Math.max(LEAST_SIZE, startSize * lays));
    return new SimulatedColony(
        lays, size, infestation, reproduction, reinvasion, infectivity, efficacy);
  }
}
