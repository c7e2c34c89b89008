package broodtide.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * Widths of text without asking for fonts, so that the same input gives the same SVG on every
 * machine, with or without fonts.
 *
 * <p>The widths are those of DejaVu Sans (read with {@code Font.getStringBounds}, JDK 17), one of
 * the widest common faces: text set in another face nearly always takes less room, so labels kept
 * apart here stay apart.
 */
final class Lettering {
  private static final int FIRST = ' ';

  /** Advance of the letters from blank to tilde, in thousandths of the letter size. */
  private static final int[] REGULAR = {
    318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, // blank to /
    636, 636, 636, 636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, // 0 to ?
    1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557, 863, 748, 787, // @ to O
    603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500, // P to _
    500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, // ` to o
    635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838 // p to ~
  };

  /** The same for bold letters. */
  private static final int[] BOLD = {
    348, 456, 521, 838, 696, 1002, 872, 306, 457, 457, 523, 838, 380, 415, 380, 365, // blank to /
    696, 696, 696, 696, 696, 696, 696, 696, 696, 696, 400, 400, 838, 838, 838, 580, // 0 to ?
    1000, 774, 762, 734, 830, 683, 683, 821, 837, 372, 372, 775, 637, 995, 837, 850, // @ to O
    733, 850, 770, 720, 682, 812, 774, 1103, 771, 724, 725, 457, 365, 457, 838, 500, // P to _
    500, 675, 716, 593, 716, 678, 435, 716, 712, 343, 343, 665, 343, 1042, 712, 687, // ` to o
    716, 716, 493, 595, 478, 712, 652, 924, 645, 652, 582, 712, 365, 712, 838 // p to ~
  };

  /** Letters outside the table, accented ones included. */
  private static final double OTHER = 0.8;

  private static final int WIDE_FROM = 0x2e80;

  private Lettering() {}

  /** Width of a line of text in picture units. */
  static double width(String text, double size, boolean bold) {
    int[] table = bold ? BOLD : REGULAR;
    return text.codePoints().mapToDouble(letter -> advance(letter, table)).sum() * size;
  }

  private static double advance(int letter, int[] table) {
    int i = letter - FIRST;
    if (i >= 0 && i < table.length) {
      return table[i] / 1000.0;
    }
    return letter >= WIDE_FROM ? 1.1 : OTHER;
  }

  /** Breaks text at blanks so that each line fits the width; a longer word is cut. */
  static List<String> wrap(String text, Type type, double width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.strip().split("\\s+", -1)) {
      String rest = word;
      if (!line.isEmpty() && width(line + " " + rest, type.size(), type.bold()) > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      int cut = fitting(rest, type, width);
      while (cut < rest.length()) {
        lines.add(rest.substring(0, cut));
        rest = rest.substring(cut);
        cut = fitting(rest, type, width);
      }
      line.append(line.isEmpty() ? "" : " ").append(rest);
    }
    if (!line.isEmpty()) {
      lines.add(line.toString());
    }
    return lines;
  }

  /** How much of a word fits the width, one letter at the least. */
  private static int fitting(String word, Type type, double width) {
    int end = word.length();
    while (end > word.offsetByCodePoints(0, word.isEmpty() ? 0 : 1)
        && width(word.substring(0, end), type.size(), type.bold()) > width) {
      end = word.offsetByCodePoints(end, -1);
    }
    return end;
  }
}
