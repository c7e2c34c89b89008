package broodtide.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A season seen from inside: of each 100, where they are, as shares that stand on one another over
 * the days; below it a ribbon as thick as the colony is strong, with a part of it hatched.
 */
public final class SeasonInside {
  /**
   * One state.
   *
   * @param name its name
   * @param shares its share on each day, 0 to 1
   */
  public record State(String name, double[] shares) {}

  private SeasonInside() {}

  /**
   * {@return the picture}
   *
   * @param heading what stands above
   * @param axis what the shares are of
   * @param first the first day
   * @param states one or more, with as many days as the ribbon; their shares of a day make 1
   * @param strength how thick the ribbon is on each day, in the unit of its name
   * @param hatched how much of it is hatched on each day
   * @param names what the ribbon is, and what its hatched part
   */
  public static Figure of(
      Heading heading,
      String axis,
      LocalDate first,
      List<State> states,
      double[] strength,
      double[] hatched,
      List<String> names) {
    int n = strength.length;
    boolean whole = n > 1 && hatched.length == n && names.size() == 2;
    for (State s : states) {
      whole &= s.shares().length == n;
    }
    Figure.some(heading, states);
    if (!whole) {
      throw new IllegalArgumentException(
          "a season from inside needs the same days, two or more, for every state, for the ribbon"
              + " and for its hatched part, and two names");
    }
    double[] x = IntStream.range(0, n).asDoubleStream().toArray();
    Axis days = Axis.days(first, first.plusDays(n - 1));
    List<Mark> shares = new ArrayList<>();
    List<Legend.Sample> key = new ArrayList<>();
    double[] below = new double[n];
    for (int s = 0; s < states.size(); s++) {
      double[] from = below.clone();
      double[] share = states.get(s).shares();
      double[] to = IntStream.range(0, n).mapToDouble(i -> from[i] + 100 * share[i]).toArray();
      Mark area = Mark.band(x, from, to, Palette.line(s), 0.7);
      shares.add(area.in("state", states.get(s).name()));
      key.add(Legend.Sample.area(Palette.line(s), 0.7, states.get(s).name()));
      below = to;
    }
    double most = IntStream.range(0, n).mapToDouble(i -> strength[i]).max().orElse(1) / 2;
    double[] up = IntStream.range(0, n).mapToDouble(i -> strength[i] / 2).toArray();
    double[] down = IntStream.range(0, n).mapToDouble(i -> -strength[i] / 2).toArray();
    double[] edge = IntStream.range(0, n).mapToDouble(i -> hatched[i] - strength[i] / 2).toArray();
    List<Mark> ribbon =
        List.of(Mark.band(x, down, up, Palette.line(4), 0.35).in("ribbon", names.get(0)));
    Mark part = Mark.hatch(x, down, edge, Pen.solid(Palette.INK, 1));
    key.add(Legend.Sample.area(Palette.line(4), 0.35, names.get(0)));
    key.add(Legend.Sample.line(Pen.solid(Palette.INK, 1), names.get(1) + ", hatched"));
    // A thickness is read off the ribbon itself, so its axis bears no numbers.
    Axis thick = Axis.numbers(names.get(0), -most * 1.05, most * 1.05).silent();
    List<Facet> facets =
        List.of(
            Facet.of("", days, Axis.numbers(axis, 0, 100), shares),
            new Facet("", days, thick, ribbon, List.of(part), List.of(peak(strength))));
    return Figure.of(heading, facets, 1, key, axis + ", over the days.");
  }

  /** The greatest thickness in figures, where it is. */
  private static Facet.Words peak(double[] strength) {
    int at =
        IntStream.range(0, strength.length).reduce(0, (a, b) -> strength[b] > strength[a] ? b : a);
    return Facet.Words.at(at, 0, Numerals.two(strength[at]) + " at most");
  }
}
