package broodtide.forms;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** The known word that somebody who misspelt one most likely meant. */
public final class Nearest {
  private Nearest() {}

  /**
   * {@return the words {@code "; did you mean \"x\"?"}, or nothing when no known word is near}
   *
   * @param word what was written
   * @param known what is known
   */
  public static String hint(String word, Collection<String> known) {
    return to(word, known).map(near -> "; did you mean \"" + near + "\"?").orElse("");
  }

  /**
   * {@return the nearest known word by edit distance, if it is near enough} A third of its letters
   * may be wrong, and never fewer than two. The first wins a tie.
   *
   * @param word what was written
   * @param known what is known
   */
  public static Optional<String> to(String word, Collection<String> known) {
    if (word.length() > 60) {
      return Optional.empty();
    }
    String given = word.toLowerCase(Locale.ROOT);
    String best = null;
    int least = Integer.MAX_VALUE;
    for (String candidate : known) {
      int edits = distance(given, candidate.toLowerCase(Locale.ROOT));
      int allowed = Math.max(2, candidate.length() / 3);
      if (edits < least && edits <= allowed && edits < candidate.length()) {
        least = edits;
        best = candidate;
      }
    }
    return Optional.ofNullable(best);
  }

  /** Letters to insert, delete, replace or swap with their neighbour to turn a into b. */
  static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int replaced = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        d[i][j] = Math.min(replaced, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
        if (i > 1 && j > 1 && swapped(a, b, i, j)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }

  private static boolean swapped(String a, String b, int i, int j) {
    return a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
  }
}
