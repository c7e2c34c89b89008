package broodtide.pages;

import broodtide.fit.Prior;
import broodtide.measure.Measure;
import broodtide.measure.Measures;
import java.util.List;
import java.util.Locale;

/** Tables of default values, read from the code that uses them. */
public final class ParameterTable {
  private static final int DIGITS = 4;

  private ParameterTable() {}

  /**
   * The measured components of records.
   *
   * @param records records with {@link Measure}s
   * @return Markdown, one table per record under its name
   */
  public static String of(List<Class<? extends Record>> records) {
    StringBuilder out = new StringBuilder();
    for (Class<? extends Record> record : records) {
      out.append("**`").append(record.getName()).append("`**\n\n");
      MarkdownTable table =
          new MarkdownTable("name", "what", "unit", "default:", "allowed", "standing", "source");
      for (Measures.Line line : Measures.table(record)) {
        Measure m = line.measure();
        table.row(
            "`" + line.name() + "`",
            m.meaning(),
            m.unit(),
            Figures.of(m.value(), DIGITS),
            Figures.of(m.min(), DIGITS) + " to " + Figures.of(m.max(), DIGITS),
            m.tag().name().toLowerCase(Locale.ROOT),
            m.source());
      }
      out.append(table).append("\n\n");
    }
    return out.toString();
  }

  /**
   * Beliefs before any wash.
   *
   * @param priors in the order of the page
   * @return Markdown
   */
  public static String ofPriors(List<Prior> priors) {
    MarkdownTable table =
        new MarkdownTable("unknown", "median:", "log sd:", "nine in ten", "standing", "source");
    for (Prior p : priors) {
      table.row(
          p.meaning(),
          Figures.of(p.median(), DIGITS),
          Figures.of(p.logSd(), DIGITS) + (p.scale() == Prior.Scale.LOGIT ? ", of the logit" : ""),
          Figures.of(p.at(-NINE_IN_TEN), 2) + " to " + Figures.of(p.at(NINE_IN_TEN), 2),
          p.tag().name().toLowerCase(Locale.ROOT),
          p.source());
    }
    return table.toString();
  }

  private static final double NINE_IN_TEN = 1.6448536269514722;
}
