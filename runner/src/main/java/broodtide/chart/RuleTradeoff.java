package broodtide.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Rules for treating: losses against treatments, with the edge of those that no other rule beats in
 * both, and below it how often each treats in vain or too late.
 */
public final class RuleTradeoff {
  /**
   * One rule.
   *
   * @param name its name
   * @param treatments treatments in a season, on average
   * @param treatmentRange range of these
   * @param loss chance of loss, 0 to 1
   * @param lossRange range of it
   * @param missed share of seasons in which a treatment was missed, 0 to 1; not a number where
   *     nothing can be missed
   * @param needless share of seasons with a treatment that was not needed, 0 to 1; not a number
   *     where that cannot be told
   */
  public record Rule(
      String name,
      double treatments,
      Range treatmentRange,
      double loss,
      Range lossRange,
      double missed,
      double needless) {}

  private RuleTradeoff() {}

  /**
   * {@return the picture}
   *
   * @param heading what stands above
   * @param rules one or more, for instance "no rule" among them
   */
  public static Figure of(Heading heading, List<Rule> rules) {
    Figure.some(heading, rules);
    List<Mark> marks = new ArrayList<>();
    List<Facet.Words> words = new ArrayList<>();
    List<Rule> edge = edge(rules);
    double[] ex = edge.stream().mapToDouble(Rule::treatments).toArray();
    double[] ey = edge.stream().mapToDouble(r -> 100 * r.loss()).toArray();
    marks.add(Mark.steps(ex, ey, new Pen(Palette.MUTED, 1.6, "6 3")).in("edge", "efficient edge"));
    List<String> names = new ArrayList<>();
    for (Rule r : rules) {
      String letter = Character.toString('A' + names.size() % 26);
      names.add(letter + ": " + r.name());
      Mark.Group group = new Mark.Group("rule", r.name());
      double loss = 100 * r.loss();
      Colour colour = edge.contains(r) ? Palette.line(0) : Palette.MUTED;
      Range t = r.treatmentRange();
      Range l = r.lossRange();
      Mark level = Mark.line(t.low(), loss, t.high(), loss, Pen.solid(colour, 1.6));
      marks.add(level.rimmed(4).in(group));
      marks.addAll(
          Mark.upright(r.treatments(), loss, 100 * l.low(), 100 * l.high(), colour, group));
      words.add(Facet.Words.at(r.treatments(), loss, letter, colour));
    }
    // Letters stay at their dots, where names would not have room.
    double most = rules.stream().mapToDouble(r -> r.treatmentRange().high()).max().orElse(1);
    double worst = rules.stream().mapToDouble(r -> 100 * r.lossRange().high()).max().orElse(1);
    Facet trade =
        Facet.of(
            "Losses against treatments",
            Axis.around("treatments a season", 1.15 * most),
            Axis.around("chance of loss, %", worst),
            marks,
            words.toArray(new Facet.Words[0]));
    Facet errors =
        Facet.of(
            "Missed and needless",
            Axis.numbers("% of seasons", 0, 100),
            Axis.list(names),
            Stream.of(
                    bars(rules.stream().mapToDouble(Rule::missed).toArray(), 0.06, 0),
                    bars(rules.stream().mapToDouble(Rule::needless).toArray(), -0.34, 1))
                .flatMap(Optional::stream)
                .toList());
    List<Legend.Sample> key =
        List.of(
            Legend.Sample.dot(Palette.line(0), "on the efficient edge"),
            Legend.Sample.dot(Palette.MUTED, "another rule is better"),
            Legend.Sample.area(Palette.line(0), 0.9, "seasons with a missed treatment"),
            Legend.Sample.area(Palette.line(1), 0.9, "seasons with a needless one"));
    String best = Figure.list(edge.stream().map(Rule::name).toList());
    return Figure.of(
            heading, List.of(trade, errors), 1, key, "On the efficient edge: " + best + ".")
        .sized(new Size(720, 640));
  }

  /** Rules that no other beats in both figures, by rising number of treatments. */
  static List<Rule> edge(List<Rule> rules) {
    List<Rule> edge = new ArrayList<>();
    double lowest = Double.POSITIVE_INFINITY;
    for (Rule r :
        rules.stream()
            .sorted(Comparator.comparingDouble(Rule::treatments).thenComparingDouble(Rule::loss))
            .toList()) {
      if (r.loss() < lowest) {
        edge.add(r);
        lowest = r.loss();
      }
    }
    return edge;
  }

  /** Bars of the rules of which the share is known; empty where none is. */
  private static Optional<Mark> bars(double[] shares, double from, int colour) {
    int[] known = IntStream.range(0, shares.length).filter(i -> shares[i] >= 0).toArray();
    if (known.length == 0) {
      return Optional.empty();
    }
    double[] to = Arrays.stream(known).mapToDouble(i -> 100 * shares[i]).toArray();
    double[] low = Arrays.stream(known).mapToDouble(i -> i + from).toArray();
    double[] high = Arrays.stream(known).mapToDouble(i -> i + from + 0.28).toArray();
    return Optional.of(
        Mark.bars(new double[known.length], to, low, high, Palette.line(colour), 0.9));
  }
}
