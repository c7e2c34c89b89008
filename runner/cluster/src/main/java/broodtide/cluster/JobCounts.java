package broodtide.cluster;

import com.fasterxml.jackson.databind.node.ObjectNode;

/**
 * What a job was given and what became of it.
 *
 * @param countsRead rows of the table of washes
 * @param countsUsed those that a hive of the sheet rests on
 * @param countsRejected those that were set aside
 * @param treatmentsRead rows of the table of treatments
 * @param treatmentsUsed those that were given to a colony with washes, or to every colony
 * @param treatmentsUnused those of colonies without washes
 * @param treatmentsRejected those that were set aside
 * @param hives hives of the sheet
 * @param yards their yards
 * @param acid whether a plan that the sheet names uses an acid
 */
record JobCounts(
    long countsRead,
    long countsUsed,
    long countsRejected,
    long treatmentsRead,
    long treatmentsUsed,
    long treatmentsUnused,
    long treatmentsRejected,
    long hives,
    long yards,
    boolean acid) {
  /** What comes in goes out or is rejected; anything else is a fault of the program. */
  JobCounts {
    if (countsRead != countsUsed + countsRejected
        || treatmentsRead != treatmentsUsed + treatmentsUnused + treatmentsRejected) {
      throw new IllegalStateException(
          "rows are lost: "
              + countsRead
              + " counts read, "
              + countsUsed
              + " used, "
              + countsRejected
              + " rejected; "
              + treatmentsRead
              + " treatments read, "
              + treatmentsUsed
              + " used, "
              + treatmentsUnused
              + " unused, "
              + treatmentsRejected
              + " rejected");
    }
  }

  String text() {
    return "Counts read: "
        + countsRead
        + "; used: "
        + countsUsed
        + "; rejected: "
        + countsRejected
        + ".\nTreatments read: "
        + treatmentsRead
        + "; used: "
        + treatmentsUsed
        + "; of colonies without counts: "
        + treatmentsUnused
        + "; rejected: "
        + treatmentsRejected
        + ".\nHives on the sheet: "
        + hives
        + ", in yards: "
        + yards
        + ".";
  }

  void write(ObjectNode node) {
    node.put("countsRead", countsRead)
        .put("countsUsed", countsUsed)
        .put("countsRejected", countsRejected)
        .put("treatmentsRead", treatmentsRead)
        .put("treatmentsUsed", treatmentsUsed)
        .put("treatmentsUnused", treatmentsUnused)
        .put("treatmentsRejected", treatmentsRejected)
        .put("hives", hives)
        .put("yards", yards);
  }
}
