package broodtide.engine;

import java.util.Arrays;

/**
 * What a plan does to a block on single days: splits, cut comb, and miticide under the cappings.
 */
final class Disturbances {
  private final ColonyBlock b;
  private final Lanes lanes;
  private final Schedule schedule;
  private final double[] hazard;
  private final double[] left;

  /** Whether any course acted on the last day seen. */
  private boolean acting;

  Disturbances(ColonyBlock block, Lanes lanes, Schedule schedule) {
    b = block;
    this.lanes = lanes;
    this.schedule = schedule;
    hazard = block.rows.row();
    left = block.rows.row();
  }

  /** Splits and cuts in the morning of a day. */
  void morning(int day) {
    if (schedule.beesLeaving[day] > 0 || schedule.broodLeaving[day] > 0) {
      split(schedule.beesLeaving[day], schedule.broodLeaving[day]);
    }
    if (schedule.droneCut[day] > 0) {
      cutDroneComb(schedule.droneCut[day]);
    }
  }

  /**
   * Fills the hazard of mites on bees, and kills mites in cells, on a day.
   *
   * @return whether any course acts
   */
  boolean miticides(int day, double[] kill) {
    boolean before = acting;
    acting = false;
    boolean reachesCells = false;
    for (int c = 0; c < schedule.courses.size(); c++) {
      Schedule.Course course = schedule.courses.get(c);
      acting |= course.action()[day] > 0;
      reachesCells |= course.action()[day] > 0 && course.inCells() > 0;
    }
    if (acting || before) {
      hazards(day, kill);
    }
    if (reachesCells) {
      Kernel.expOfMinus(left, hazard);
      killInCells();
    }
    return acting;
  }

  private void hazards(int day, double[] kill) {
    Arrays.fill(kill, 0);
    Arrays.fill(hazard, 0);
    for (int c = 0; c < schedule.courses.size(); c++) {
      Schedule.Course course = schedule.courses.get(c);
      double action = course.action()[day];
      if (action > 0) {
        add(kill, lanes.success[c], action * course.onBees());
        add(hazard, lanes.success[c], action * course.inCells());
      }
    }
  }

  private void killInCells() {
    b.sumUp();
    for (int l = 0; l < b.width; l++) {
      b.killed[l] += (b.inWorker[l] + b.inDrone[l]) * (1 - left[l]);
    }
    b.infestedWorker.disturbed();
    b.infestedDrone.disturbed();
    for (double[][] ring : b.miteRings()) {
      for (double[] row : ring) {
        Kernel.scale(row, left);
      }
    }
    Kernel.scale(b.inWorker, left);
    Kernel.scale(b.inDrone, left);
  }

  private void split(double bees, double brood) {
    b.sumUp();
    for (int l = 0; l < b.width; l++) {
      b.movedAway[l] += b.phoretic[l] * bees + (b.inWorker[l] + b.inDrone[l]) * brood;
    }
    Kernel.scale(b.phoretic, 1 - bees);
    for (double[] adults : b.adults) {
      Kernel.scale(adults, 1 - bees);
    }
    b.infestedWorker.disturbed();
    b.infestedDrone.disturbed();
    for (double[][][] rings : new double[][][][] {b.broodRings(), b.miteRings()}) {
      for (double[][] ring : rings) {
        scale(ring, 1 - brood);
      }
    }
    b.sumUp();
  }

  private void cutDroneComb(double taken) {
    b.sumUp();
    for (int l = 0; l < b.width; l++) {
      b.cutOut[l] += b.inDrone[l] * taken;
    }
    b.infestedDrone.disturbed();
    scale(b.openDrone, 1 - taken);
    scale(b.cappedDrone, 1 - taken);
    scale(b.droneMothers, 1 - taken);
    b.sumUp();
  }

  private static void add(double[] into, double[] scale, double hazard) {
    for (int l = 0; l < into.length; l++) {
      into[l] += scale[l] * hazard;
    }
  }

  private static void scale(double[][] ring, double factor) {
    for (double[] row : ring) {
      Kernel.scale(row, factor);
    }
  }
}
