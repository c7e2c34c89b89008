package broodtide.wash;

/** The parts of a beekeeping year that thresholds tell apart. */
public enum Stage {
  /** Spring, colonies growing, before the main flow. */
  BUILD_UP("build-up", "spring build-up"),
  /** Honey coming in, supers on. */
  HONEY_FLOW("honey-flow", "honey flow"),
  /** Supers off, before winter bees are raised. */
  AFTER_HARVEST("after-harvest", "after harvest"),
  /** The weeks in which winter bees are raised. */
  WINTER_BEES("winter-bees", "raising of winter bees"),
  /** No brood. */
  BROODLESS("broodless", "broodless time");

  private final String id;
  private final String title;

  Stage(String id, String title) {
    this.id = id;
    this.title = title;
  }

  /** {@return the name in files: lower case with hyphens} */
  public String id() {
    return id;
  }

  /** {@return the name in a sentence} */
  public String title() {
    return title;
  }
}
