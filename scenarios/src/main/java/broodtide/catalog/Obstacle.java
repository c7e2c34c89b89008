package broodtide.catalog;

/**
 * What keeps a control from being begun on a day.
 *
 * @param kind which kind of obstacle
 * @param words the whole reason with the control's name and its date
 */
public record Obstacle(Kind kind, String words) {
  /** Kinds of obstacle, each with a letter for maps. */
  public enum Kind {
    /** The plan as a whole cannot be carried out. */
    CLASH('X', "clashes with what is done already"),
    /** Supers are usually on, and the control is not for use under them. */
    SUPERS('S', "honey supers on"),
    /** Days are usually too cold. */
    COLD('C', "too cold"),
    /** Days are usually too warm. */
    WARM('W', "too warm"),
    /** There is capped brood, and the control is known to work without brood alone. */
    BROOD('B', "brood in the hive"),
    /** No drones are reared. */
    NO_DRONES('D', "no drones reared"),
    /** No eggs are laid. */
    NO_EGGS('E', "no eggs laid");

    private final char code;
    private final String reason;

    Kind(char code, String reason) {
      this.code = code;
      this.reason = reason;
    }

    /** {@return one letter} */
    public char code() {
      return code;
    }

    /** {@return a few words} */
    public String reason() {
      return reason;
    }
  }
}
