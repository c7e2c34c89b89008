package broodtide.chart;

import java.util.ArrayList;
import java.util.List;

/** Which unknown matters: what share of the spread of an answer each accounts for. */
public final class SensitivityBars {
  /**
   * One unknown.
   *
   * @param name its name
   * @param share its index, 0 to 1
   * @param range 90 % range of the estimate, which may reach below 0
   * @param before its share before anything was known, with all that it does together with others
   * @param beforeRange 90 % range of that
   */
  public record Index(String name, double share, Range range, double before, Range beforeRange) {
    /** {@return whether it can be told from nothing} */
    public boolean counts() {
      return range.low() > 0;
    }

    /** {@return whether its share before anything was known can be told from nothing} */
    public boolean countsBefore() {
      return beforeRange.low() > 0;
    }
  }

  private static final Colour BEFORE = Palette.line(1);

  private SensitivityBars() {}

  /** Which of the two shares, if any, cannot be told from nothing. */
  private static String doubt(Index x) {
    if (x.counts()) {
      return x.countsBefore() ? "" : " (before: cannot be told from 0)";
    }
    return x.countsBefore() ? " (cannot be told from 0)" : " (both: cannot be told from 0)";
  }

  /**
   * {@return the picture, the greatest at the top}
   *
   * @param heading what stands above
   * @param axis what the bars are shares of
   * @param indices one or more
   */
  public static Figure of(Heading heading, String axis, List<Index> indices) {
    Figure.some(heading, indices);
    List<Index> rising =
        indices.stream().sorted((a, b) -> Double.compare(a.share(), b.share())).toList();
    List<Mark> marks = new ArrayList<>();
    List<String> names = new ArrayList<>();
    double low = 0;
    double high = 0;
    for (int i = 0; i < rising.size(); i++) {
      Index x = rising.get(i);
      names.add(x.name() + doubt(x));
      double opacity = x.counts() ? 0.75 : 0.25;
      marks.add(
          Mark.bars(
              new double[] {0},
              new double[] {Math.max(0, x.share())},
              new double[] {i - 0.3},
              new double[] {i + 0.3},
              Palette.line(0),
              opacity));
      Mark.Group earlier = new Mark.Group("before", x.name() + ": " + Numerals.percent(x.before()));
      Range b = x.beforeRange();
      marks.add(Mark.line(b.low(), i - 0.4, b.high(), i - 0.4, Pen.solid(BEFORE, 1.6)).in(earlier));
      marks.add(
          Mark.dots(new double[] {x.before()}, new double[] {i - 0.4}, BEFORE, 3.4).in(earlier));
      low = Math.min(low, b.low());
      high = Math.max(high, b.high());
      Range r = x.range();
      Mark.Group group = new Mark.Group("index", x.name() + ": " + Numerals.percent(x.share()));
      marks.addAll(Mark.level(i, x.share(), r.low(), r.high(), Palette.INK, group));
      low = Math.min(low, r.low());
      high = Math.max(high, r.high());
    }
    marks.add(Mark.line(0, -0.5, 0, rising.size() - 0.5, Pen.ZERO).in("zero", "no share"));
    String said =
        Figure.sentences(
            rising.stream()
                .map(
                    x ->
                        x.name()
                            + ": "
                            + Numerals.percent(x.share())
                            + ", before any wash "
                            + Numerals.percent(x.before())));
    Facet facet = Facet.of("", Axis.around(axis, low, high), Axis.list(names), marks);
    List<Legend.Sample> key =
        List.of(
            Legend.Sample.area(Palette.line(0), 0.75, "with the washes, by itself"),
            Legend.Sample.dot(BEFORE, "before any wash, together with others"));
    return Figure.of(heading, facet, key, axis + ". " + said);
  }
}
