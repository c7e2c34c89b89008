package broodtide.web;

import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A page with gaps, <code>{{name}}</code>, among the program's own files.
 *
 * @param name file name
 * @param text the page
 */
public record Template(String name, String text) {
  private static final Pattern GAP = Pattern.compile("\\{\\{([a-z]+)}}");

  /** The template of that name. */
  static Template named(String name) {
    return new Template(name, Assets.text("pages/" + name));
  }

  /**
   * The page with every gap filled.
   *
   * @throws IllegalStateException when gaps and pieces do not match
   */
  Html fill(Map<String, Html> pieces) {
    Set<String> unused = new HashSet<>(pieces.keySet());
    String filled =
        GAP.matcher(text)
            .replaceAll(
                gap -> {
                  unused.remove(gap.group(1));
                  return Matcher.quoteReplacement(piece(pieces, gap).markup());
                });
    if (!unused.isEmpty()) {
      throw new IllegalStateException(name + " has no gap for " + unused);
    }
    return new Html(filled);
  }

  private Html piece(Map<String, Html> pieces, MatchResult gap) {
    Html piece = pieces.get(gap.group(1));
    if (piece == null) {
      throw new IllegalStateException(name + " has a gap that nothing fills: " + gap.group());
    }
    return piece;
  }
}
