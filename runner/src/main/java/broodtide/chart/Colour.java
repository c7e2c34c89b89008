package broodtide.chart;

import java.util.Locale;

/**
 * One opaque sRGB colour. AWT's own class is avoided so that an SVG needs neither AWT nor fonts.
 *
 * @param rgb red, green and blue, 8 bits each
 */
record Colour(int rgb) {
  /**
   * Reads {@code #rrggbb}.
   *
   * @param hex a hash and six hexadecimal digits
   * @return the colour
   */
  public static Colour of(String hex) {
    if (!hex.matches("#[0-9a-fA-F]{6}")) {
      throw new IllegalArgumentException("colour is '" + hex + "'; write it as #rrggbb");
    }
    return new Colour(Integer.parseInt(hex.substring(1), 16));
  }

  /** {@return the shortest CSS spelling, {@code #rgb} where that says the same} */
  public String css() {
    String s = String.format(Locale.ROOT, "#%06x", rgb);
    boolean pairs =
        s.charAt(1) == s.charAt(2) && s.charAt(3) == s.charAt(4) && s.charAt(5) == s.charAt(6);
    return pairs ? "#" + s.charAt(1) + s.charAt(3) + s.charAt(5) : s;
  }

  /**
   * {@return one channel, 0 to 255: 0 is red, 1 green, 2 blue}
   *
   * @param i 0 red, 1 green, 2 blue
   */
  public int channel(int i) {
    return (rgb >> (16 - 8 * i)) & 0xff;
  }

  /**
   * {@return a colour between this and another}
   *
   * @param t 0 gives this colour, 1 the other
   * @param other the other colour
   */
  public Colour towards(Colour other, double t) {
    int mixed = 0;
    for (int i = 0; i < 3; i++) {
      long c = Math.round(channel(i) + t * (other.channel(i) - channel(i)));
      mixed = mixed << 8 | (int) Math.max(0, Math.min(255, c));
    }
    return new Colour(mixed);
  }

  /** {@return relative luminance, 0 black to 1 white, as in WCAG 2.1} */
  public double luminance() {
    return 0.2126 * linear(0) + 0.7152 * linear(1) + 0.0722 * linear(2);
  }

  /**
   * {@return contrast ratio with another colour, 1 to 21, as in WCAG 2.1}
   *
   * @param other the other colour
   */
  public double contrast(Colour other) {
    double a = luminance() + 0.05;
    double b = other.luminance() + 0.05;
    return Math.max(a, b) / Math.min(a, b);
  }

  /**
   * {@return this colour, darkened just so far that text in it can be read on white (contrast 4.5)}
   */
  public Colour asText() {
    Colour white = new Colour(0xffffff);
    Colour black = new Colour(0);
    for (int step = 0; step < 20; step++) {
      Colour darker = towards(black, step / 20.0);
      if (darker.contrast(white) >= 4.5) {
        return darker;
      }
    }
    return black;
  }

  private double linear(int i) {
    double c = channel(i) / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }
}
