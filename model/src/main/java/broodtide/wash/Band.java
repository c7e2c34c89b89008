package broodtide.wash;

import broodtide.measure.OutOfRange;
import java.util.List;
import java.util.Optional;

/**
 * Words that hold from a count upwards.
 *
 * @param from lowest count, mites in as many bees as the threshold set counts by
 * @param words what beekeepers make of it, a statement and never an order
 */
public record Band(double from, String words) {
  /** Checks the range. */
  public Band {
    OutOfRange.check("from", from, 0, 1000, "mites");
    if (words.isBlank()) {
      throw new OutOfRange("words", "blank", "a sentence");
    }
  }

  /**
   * A copy of bands, checked to rise.
   *
   * @throws OutOfRange when two stand in the wrong order or at the same count
   */
  static List<Band> inOrder(List<Band> bands) {
    for (int i = 1; i < bands.size(); i++) {
      double before = bands.get(i - 1).from();
      if (!(bands.get(i).from() > before)) {
        String found = Double.toString(bands.get(i).from());
        throw new OutOfRange(
            "bands", found, "counts that rise from band to band, here above " + before);
      }
    }
    return List.copyOf(bands);
  }

  /** The last band that starts at or below a count. */
  static Optional<Band> at(List<Band> bands, double count) {
    return bands.stream().filter(b -> b.from() <= count + 1e-9).reduce((a, b) -> b);
  }
}
