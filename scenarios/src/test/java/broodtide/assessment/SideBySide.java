package broodtide.assessment;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * One figure of the late season as published, as the prototype reached that the rules were fitted
 * with, and as the program gives it.
 *
 * @param figure what is measured
 * @param published what its source says
 * @param prototype what the prototype reached
 * @param program what this version gives
 */
record SideBySide(String figure, String published, String prototype, String program) {
  /** Shares with two digits and no nought before the point. */
  static String shares(double... values) {
    return shares(2, values);
  }

  static String shares(int digits, double... values) {
    return Arrays.stream(values)
        .mapToObj(v -> String.format(Locale.ROOT, "%." + digits + "f", v).replaceFirst("^0", ""))
        .collect(Collectors.joining(" "));
  }
}
