package broodtide.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How good forecasts were: each against the count that came, where the counts fell within their
 * forecasts, and the skill beside plainer ways to forecast.
 */
public final class ForecastCheck {
  /**
   * One forecast and what came.
   *
   * @param forecast middle of the forecast, mites
   * @param range its 90 % range
   * @param counted mites counted
   */
  public record Pair(double forecast, Range range, double counted) {}

  /**
   * Skill against another way to forecast.
   *
   * @param name the other way
   * @param skill 1 perfect, 0 no better, below 0 worse
   * @param range 90 % range of it
   */
  public record Skill(String name, double skill, Range range) {}

  private ForecastCheck() {}

  /**
   * {@return the picture}
   *
   * @param heading what stands above
   * @param pairs forecasts with what came; one or more
   * @param ranks forecasts by the part of them that the count fell in, lowest first, as many parts
   *     as wished; a count that straddles parts is shared between them
   * @param skills skill against each other way
   */
  public static Figure of(Heading heading, List<Pair> pairs, double[] ranks, List<Skill> skills) {
    Figure.some(heading, pairs);
    Figure.some(heading, skills);
    if (ranks.length < 2) {
      throw new IllegalArgumentException(
          "ranks have " + ranks.length + " parts; give two or more, as many as are to be drawn");
    }
    return Figure.of(
        heading,
        List.of(against(pairs), ranks(ranks), skills(skills)),
        2,
        List.of(),
        "Skill: "
            + Figure.list(
                skills.stream().map(s -> s.name() + " " + Numerals.two(s.skill())).toList())
            + ".");
  }

  private static Facet against(List<Pair> pairs) {
    double most =
        pairs.stream().mapToDouble(p -> Math.max(p.range().high(), p.counted())).max().orElse(1);
    List<Mark> marks = new ArrayList<>();
    marks.add(Mark.line(0, 0, 1.06 * most, 1.06 * most, new Pen(Palette.MUTED, 1.6, "6 3")));
    for (Pair p : pairs) {
      Mark.Group group =
          new Mark.Group(
              "pair",
              "counted " + Numerals.two(p.counted()) + ", forecast " + Numerals.two(p.forecast()));
      marks.addAll(
          Mark.upright(
              p.counted(),
              p.forecast(),
              p.range().low(),
              p.range().high(),
              Palette.line(0),
              group));
    }
    Axis x = Axis.around("mites counted", most);
    return Facet.of("Forecast against count", x, Axis.around("mites forecast", most), marks);
  }

  private static Facet ranks(double[] ranks) {
    int n = ranks.length;
    double even = Arrays.stream(ranks).sum() / n;
    double[] left = IntStream.range(0, n).mapToDouble(i -> 100.0 * i / n).toArray();
    double[] right = IntStream.range(0, n).mapToDouble(i -> 100.0 * (i + 1) / n - 0.6).toArray();
    double[] high = ranks.clone();
    double most = Math.max(even, Arrays.stream(high).max().orElse(1));
    return Facet.of(
        "Where counts fell in their forecasts",
        Axis.numbers("% of the forecast below the count", 0, 100),
        Axis.around("forecasts", most),
        List.of(
            Mark.bars(left, right, new double[n], high, Palette.line(0), 0.55),
            Mark.line(0, even, 100, even, Pen.THRESHOLD).in("even", "as many in each part")),
        Facet.Words.at(50, even, "even"));
  }

  private static Facet skills(List<Skill> skills) {
    List<Mark> marks = new ArrayList<>();
    List<Double> ends = new ArrayList<>(List.of(0.0, 0.5));
    for (int i = 0; i < skills.size(); i++) {
      Skill s = skills.get(i);
      double[] from = {Math.min(0, s.skill())};
      double[] to = {Math.max(0, s.skill())};
      marks.add(
          Mark.bars(
              from, to, new double[] {i - 0.25}, new double[] {i + 0.25}, Palette.line(2), 0.6));
      Mark.Group group = new Mark.Group("skill", s.name());
      Range r = s.range();
      marks.addAll(Mark.level(i, s.skill(), r.low(), r.high(), Palette.INK, group));
      ends.addAll(List.of(r.low(), r.high()));
    }
    marks.add(Mark.line(0, -0.5, 0, skills.size() - 0.5, Pen.ZERO).in("zero", "no better"));
    double[] all = ends.stream().mapToDouble(Double::doubleValue).toArray();
    return Facet.of(
        "Skill: 1 perfect, 0 no better",
        Axis.around("", all),
        Axis.list(skills.stream().map(Skill::name).toList()),
        marks);
  }
}
