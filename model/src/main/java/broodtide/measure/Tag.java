package broodtide.measure;

/** How a value is known. Shown wherever the value is listed. */
public enum Tag {
  /** Read in the cited paper, page or data file. */
  SEEN,
  /** Computed from an open data file. */
  DATA,
  /** Arithmetic on figures that were seen. */
  DERIVED,
  /** Recalled, not verified. */
  MEMORY,
  /** A modelling choice of this project. */
  CHOICE
}
