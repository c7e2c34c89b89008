package broodtide.measure;

/**
 * A value outside what its field allows. The message names the field, the value, the unit and the
 * range.
 */
public final class OutOfRange extends RefusedException {
  private static final long serialVersionUID = 1L;

  /** The field as a user writes it. */
  private final String field;

  /** What is allowed, in words. */
  private final String allowed;

  /**
   * @param field the field's name as a user writes it
   * @param value the value given, as text
   * @param allowed what is allowed, in words with the unit
   */
  public OutOfRange(String field, String value, String allowed) {
    super(field + " is " + value + "; expected " + allowed);
    this.field = field;
    this.allowed = allowed;
  }

  /** {@return the field's name, without its record} */
  public String field() {
    return field;
  }

  /** {@return what is allowed, in words} */
  public String allowed() {
    return allowed;
  }

  /**
   * Checks one value.
   *
   * @param field the field's name
   * @param value the value; NaN is never allowed
   * @param min smallest value allowed
   * @param max largest value allowed
   * @param unit unit, {@code 1} for a pure number
   * @return the value
   * @throws OutOfRange when it lies outside
   */
  public static double check(String field, double value, double min, double max, String unit) {
    if (!(value >= min && value <= max)) {
      throw new OutOfRange(field, plain(value), range(min, max, unit));
    }
    return value;
  }

  /**
   * {@return the range in words: {@code 0 to 1 1/day}, {@code 0 or more bees}}
   *
   * @param min smallest value allowed
   * @param max largest value allowed; the largest double stands for no end
   * @param unit unit; {@code 1} is left out
   */
  public static String range(double min, double max, String unit) {
    String span =
        max >= Double.MAX_VALUE ? plain(min) + " or more" : plain(min) + " to " + plain(max);
    return unit.equals("1") ? span : span + " (" + unit + ")";
  }

  private static String plain(double v) {
    return v == Math.rint(v) && Math.abs(v) < 1e15 ? Long.toString((long) v) : Double.toString(v);
  }
}
