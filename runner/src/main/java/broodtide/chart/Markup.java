package broodtide.chart;

/** Text as it stands in SVG and HTML. */
public final class Markup {
  private Markup() {}

  /**
   * Text safe inside XML and HTML, in elements and between double quotes. Signs that XML 1.0
   * forbids, and those that turn the direction of the text after them, become a replacement mark.
   *
   * @param text any text
   * @return the text with its special signs written as entities
   */
  public static String escape(String text) {
    StringBuilder s = new StringBuilder(text.length() + 8);
    text.codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '&' -> s.append("&amp;");
                case '<' -> s.append("&lt;");
                case '>' -> s.append("&gt;");
                case '"' -> s.append("&quot;");
                default -> s.appendCodePoint(allowed(c) ? c : 0xfffd);
              }
            });
    return s.toString();
  }

  private static boolean allowed(int c) {
    boolean turns = (c >= 0x202a && c <= 0x202e) || (c >= 0x2066 && c <= 0x2069);
    return c == '\t'
        || c == '\n'
        || c == '\r'
        || (c >= 0x20 && c < 0x7f)
        || (c >= 0xa0 && c <= 0xd7ff && !turns)
        || (c >= 0xe000 && c <= 0xfffd)
        || c >= 0x10000;
  }
}
