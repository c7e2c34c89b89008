package broodtide.chart;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.util.function.Supplier;

/** Makes sure, before a bitmap is drawn, that this machine can draw letters without a screen. */
final class Fonts {
  private Fonts() {}

  /**
   * Turns on drawing without a screen and tries one letter.
   *
   * @throws FontsMissing when there are no fonts
   */
  static void ready() {
    if (System.getProperty("java.awt.headless") == null) {
      System.setProperty("java.awt.headless", "true");
    }
    ready(
        () ->
            sans(12, false)
                .getStringBounds("m", new FontRenderContext(null, true, true))
                .getWidth());
  }

  /** The same check with another way to measure a letter. */
  static void ready(Supplier<Double> letterWidth) {
    double width;
    try {
      width = letterWidth.get();
    } catch (RuntimeException | LinkageError | InternalError e) {
      // The JDK reports absent fonts in three ways, by release and by the library that is absent.
      throw new FontsMissing(e);
    }
    if (!(width > 0)) {
      throw new FontsMissing(null);
    }
  }

  /** The sans-serif face; {@code deriveFont(int)} would round the size to a whole number. */
  static Font sans(double size, boolean bold) {
    return new Font(Font.SANS_SERIF, Font.PLAIN, 1)
        .deriveFont(bold ? Font.BOLD : Font.PLAIN, (float) size);
  }
}
