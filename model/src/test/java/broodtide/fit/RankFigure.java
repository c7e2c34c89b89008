package broodtide.fit;

import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.distribution.BinomialDistribution;

/**
 * Rank histograms as a picture: one panel per quantity, with the band that 99 % of bins keep to.
 */
final class RankFigure {
  private static final int BINS = 16;
  private static final int WIDE = 240;
  private static final int HIGH = 160;
  private static final int PER_ROW = 4;

  private RankFigure() {}

  static String svg(List<Calibration.Ranks> all, int particles, String command) {
    int repeats = all.get(0).ranks().length;
    int rows = (all.size() + PER_ROW - 1) / PER_ROW;
    int width = PER_ROW * WIDE + 20;
    int height = rows * HIGH + 76;
    StringBuilder out = new StringBuilder();
    add(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\""
            + " height=\"%d\" font-family=\"sans-serif\" role=\"img\">%n",
        width,
        height,
        width,
        height);
    add(out, "<rect width=\"%d\" height=\"%d\" fill=\"#ffffff\"/>%n", width, height);
    add(
        out,
        "<text x=\"16\" y=\"24\" font-size=\"15\">Ranks of the truth among %d draws: %d repeats, %d"
            + " particles each; flat is honest, the band holds 99 in 100 bars</text>%n",
        Calibration.DRAWS,
        repeats,
        particles);
    for (int q = 0; q < all.size(); q++) {
      panel(out, all.get(q), 16 + q % PER_ROW * WIDE, 40 + q / PER_ROW * HIGH);
    }
    add(out, "<text x=\"16\" y=\"%d\" font-size=\"11\">%s</text>%n</svg>%n", height - 12, command);
    return out.toString();
  }

  private static void panel(StringBuilder out, Calibration.Ranks ranks, int x, int y) {
    int[] bars = ranks.histogram(BINS);
    int repeats = ranks.ranks().length;
    BinomialDistribution bin = new BinomialDistribution(null, repeats, 1.0 / BINS);
    int low = bin.inverseCumulativeProbability(0.005);
    int high = bin.inverseCumulativeProbability(0.995);
    double unit = 88.0 / (1.6 * repeats / BINS);
    int wide = WIDE - 28;
    int base = y + 118;
    add(
        out,
        "<text x=\"%d\" y=\"%d\" font-size=\"12\">%s (p = %.2f)</text>%n",
        x,
        y + 20,
        ranks.name(),
        ranks.p(BINS));
    add(
        out,
        "<rect x=\"%d\" y=\"%.1f\" width=\"%d\" height=\"%.1f\" fill=\"#dfe3e8\"/>%n",
        x,
        base - high * unit,
        wide,
        (high - low) * unit);
    for (int b = 0; b < BINS; b++) {
      add(
          out,
          "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" fill=\"#2b5c8a\""
              + " fill-opacity=\"0.75\"/>%n",
          x + (double) b * wide / BINS,
          base - bars[b] * unit,
          (double) wide / BINS - 1,
          bars[b] * unit);
    }
    add(
        out,
        "<line x1=\"%d\" x2=\"%d\" y1=\"%d\" y2=\"%d\" stroke=\"#333333\"/>%n",
        x,
        x + wide,
        base,
        base);
  }

  private static void add(StringBuilder out, String format, Object... values) {
    out.append(String.format(Locale.ROOT, format, values).replace("\r\n", "\n"));
  }
}
