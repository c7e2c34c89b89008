package broodtide.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A season seen from inside: of each 100, in what state they are, as shares that stand on one
 * another over the days; a ribbon as thick as the colony is strong, with a part of it hatched; and
 * below it further shares on the same days. A further state is a further {@link State} of a stack.
 */
public final class SeasonInside {
  /** Shares that are drawn a little paler than lines. */
  private static final double STRENGTH = 0.7;

  /** Least height of a state, as a part of its field, in which its name is written; choice. */
  private static final double ROOM = 0.2;

  /**
   * One state.
   *
   * @param name its name
   * @param shares its share on each day, 0 to 1
   */
  public record State(String name, double[] shares) {}

  /**
   * States that stand on one another.
   *
   * @param axis what the shares are of
   * @param whole whether they make up the whole, so that the axis reaches 100; else it reaches as
   *     far as they do
   * @param states one or more
   */
  public record Stack(String axis, boolean whole, List<State> states) {
    /** Copies the list. */
    public Stack {
      states = List.copyOf(states);
    }
  }

  /**
   * The colony's strength.
   *
   * @param name what it is
   * @param strength how thick it is on each day, in the unit of its name
   * @param part what its hatched part is
   * @param hatched how much of it is hatched on each day
   */
  public record Ribbon(String name, double[] strength, String part, double[] hatched) {}

  private SeasonInside() {}

  /**
   * {@return the picture}
   *
   * @param heading what stands above
   * @param first the first day
   * @param above shares above the ribbon
   * @param ribbon the strength, with as many days as the shares
   * @param below shares below the ribbon
   */
  public static Figure of(
      Heading heading, LocalDate first, Stack above, Ribbon ribbon, Stack below) {
    List<State> states = Stream.of(above, below).flatMap(s -> s.states().stream()).toList();
    Figure.some(heading, above.states());
    int n = ribbon.strength().length;
    boolean same = n > 1 && ribbon.hatched().length == n;
    if (!same || states.stream().anyMatch(s -> s.shares().length != n)) {
      throw new IllegalArgumentException(
          "a season from inside needs the same days, two or more, for every state, for the ribbon"
              + " and for its hatched part");
    }
    Axis days = Axis.days(first, first.plusDays(n - 1));
    List<Legend.Sample> key = new ArrayList<>();
    List<Facet> facets = new ArrayList<>();
    facets.add(stacked(above, days, 0, key));
    facets.add(thick(ribbon, days, key));
    if (!below.states().isEmpty()) {
      facets.add(stacked(below, days, above.states().size(), key));
    }
    return Figure.of(heading, facets, 1, key, words(first, n, states, ribbon));
  }

  private static Facet stacked(Stack stack, Axis days, int colour, List<Legend.Sample> key) {
    int n = stack.states().get(0).shares().length;
    double[] x = IntStream.range(0, n).asDoubleStream().toArray();
    double[] all = new double[n];
    stack.states().forEach(s -> Arrays.setAll(all, i -> all[i] + 100 * s.shares()[i]));
    double top = stack.whole() ? 100 : Math.max(1, 1.1 * Arrays.stream(all).max().orElse(1));
    List<Mark> marks = new ArrayList<>();
    List<Facet.Words> names = new ArrayList<>();
    double[] from = new double[n];
    for (int s = 0; s < stack.states().size(); s++) {
      State state = stack.states().get(s);
      Colour paint = Palette.line(colour + s);
      double[] foot = from.clone();
      double[] to = new double[n];
      Arrays.setAll(to, i -> foot[i] + 100 * state.shares()[i]);
      marks.add(Mark.band(x, foot, to, paint, STRENGTH).in("state", state.name()));
      // A pale edge keeps neighbours apart where their colours look alike.
      marks.add(Mark.line(x, to, Pen.solid(Palette.PAPER, 1.2)).in("edge", ""));
      key.add(Legend.Sample.area(paint, STRENGTH, state.name()));
      int at = highest(state.shares());
      if (100 * state.shares()[at] > ROOM * top) {
        double middle = (foot[at] + to[at]) / 2;
        names.add(Facet.Words.around(at, middle, state.name()));
      }
      from = to;
    }
    return new Facet("", days, Axis.numbers(stack.axis(), 0, top), marks, List.of(), names);
  }

  private static Facet thick(Ribbon ribbon, Axis days, List<Legend.Sample> key) {
    double[] strength = ribbon.strength();
    int n = strength.length;
    double[] x = IntStream.range(0, n).asDoubleStream().toArray();
    double[] up = Arrays.stream(strength).map(v -> v / 2).toArray();
    double[] down = Arrays.stream(strength).map(v -> -v / 2).toArray();
    double[] edge = new double[n];
    Arrays.setAll(edge, i -> Math.min(strength[i], ribbon.hatched()[i]) - strength[i] / 2);
    int most = highest(strength);
    Colour paint = Palette.MUTED;
    Mark whole = Mark.band(x, down, up, paint, 0.35).in("ribbon", ribbon.name());
    Mark part = Mark.hatch(x, down, edge, Pen.solid(Palette.INK, 1));
    key.add(Legend.Sample.line(Pen.solid(Palette.INK, 1), ribbon.part() + ", hatched"));
    // A thickness is read off the ribbon itself, so its axis bears no numbers.
    double half = Math.max(1, strength[most]) * 0.525;
    Axis thick = Axis.numbers(ribbon.name() + ": the thicker, the more", -half, half).silent();
    String said = Numerals.two(strength[most]) + " " + ribbon.name();
    Facet.Words peak = Facet.Words.around(most, 0, said);
    return new Facet("", days, thick, List.of(whole), List.of(part), List.of(peak));
  }

  private static String words(LocalDate first, int n, List<State> states, Ribbon ribbon) {
    List<String> said = new ArrayList<>();
    for (State s : states) {
      int at = highest(s.shares());
      said.add(
          s.name()
              + ": at most "
              + Numerals.two(100 * s.shares()[at])
              + " of 100, on "
              + first.plusDays(at));
    }
    int most = highest(ribbon.strength());
    said.add(
        Numerals.two(ribbon.strength()[most])
            + " "
            + ribbon.name()
            + " at most, on "
            + first.plusDays(most));
    return "Shares from "
        + first
        + " to "
        + first.plusDays(n - 1)
        + ". "
        + Figure.sentences(said.stream());
  }

  private static int highest(double[] values) {
    return IntStream.range(0, values.length).reduce(0, (a, b) -> values[b] > values[a] ? b : a);
  }
}
