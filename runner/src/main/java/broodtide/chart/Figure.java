package broodtide.chart;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A picture of one field or of several side by side: a curve, bars, small multiples.
 *
 * <p>A kind of picture is a class that turns plain figures into fields with marks; see {@link
 * WashCurve} for the smallest. A value, safe to share between threads.
 */
public final class Figure implements Picture {
  private static final double FOOT = 6;
  private static final double GAP = 20;
  private static final double NOTE_ROW = 19;
  private static final double NAMES = 0.34;

  private final Heading heading;
  private final List<Facet> facets;
  private final int columns;
  private final List<Legend.Sample> key;
  private final String description;
  private final Size size;

  private Figure(
      Heading heading,
      List<Facet> facets,
      int columns,
      List<Legend.Sample> key,
      String description,
      Size size) {
    some(heading, facets);
    this.heading = heading;
    this.facets = List.copyOf(facets);
    this.columns = columns;
    this.key = List.copyOf(key);
    this.description = description;
    this.size = size;
  }

  /** One field. */
  static Figure of(Heading heading, Facet facet, List<Legend.Sample> key, String description) {
    return of(heading, List.of(facet), 1, key, description);
  }

  /** Fields in rows of this many; on a narrow picture one below the other. */
  static Figure of(
      Heading heading,
      List<Facet> facets,
      int columns,
      List<Legend.Sample> key,
      String description) {
    return new Figure(heading, facets, columns, key, description, new Size(720, 400));
  }

  @Override
  public Heading heading() {
    return heading;
  }

  @Override
  public Size size() {
    return size;
  }

  @Override
  public Figure sized(Size other) {
    return new Figure(heading, facets, columns, key, description, other);
  }

  @Override
  public Size drawn() {
    double needed = around();
    for (int row = 0; row < rows(); row++) {
      needed += inRow(row).mapToDouble(Facet::least).max().orElse(0);
    }
    return size.atLeast(needed);
  }

  @Override
  public String description() {
    return description;
  }

  @Override
  public void paint(Canvas canvas) {
    Size drawn = drawn();
    double top = heading.paint(canvas, drawn) + FOOT;
    Legend legend = Legend.ofSamples(key, drawn);
    legend.paint(canvas, top);
    top += legend.height();
    double spare = drawn.height() - around();
    double least = 0;
    for (int row = 0; row < rows(); row++) {
      least += inRow(row).mapToDouble(Facet::least).max().orElse(0);
    }
    double width = (drawn.width() - 2 * Heading.MARGIN - (across() - 1) * GAP) / across();
    for (int row = 0; row < rows(); row++) {
      List<Facet> beside = inRow(row).toList();
      double height = spare / least * beside.stream().mapToDouble(Facet::least).max().orElse(0);
      double field = top + highest(row, true);
      for (int i = 0; i < beside.size(); i++) {
        double left = Heading.MARGIN + i * (width + GAP);
        double names = names(i, NAMES * width);
        Box box = new Box(left + names, field, width - names - 8, height);
        beside.get(i).paint(canvas, left, box);
      }
      top = field + height + highest(row, false);
    }
    List<String> notes = notes();
    for (int i = 0; i < notes.size(); i++) {
      double y = drawn.height() - 8 - (notes.size() - 1 - i) * NOTE_ROW;
      canvas.write(notes.get(i), Heading.MARGIN, y, Type.LABEL);
    }
  }

  /** Room for the numbers or names of the fields of one column, which then stand in line. */
  private double names(int column, double most) {
    return IntStream.range(0, facets.size())
        .filter(i -> i % across() == column)
        .mapToDouble(i -> facets.get(i).left(most))
        .max()
        .orElse(0);
  }

  /** Height of all but the fields. */
  private double around() {
    double sum = heading.height(size) + FOOT + Legend.ofSamples(key, size).height();
    for (int row = 0; row < rows(); row++) {
      sum += highest(row, true) + highest(row, false);
    }
    return sum + FOOT + notes().size() * NOTE_ROW;
  }

  private double highest(int row, boolean above) {
    return inRow(row).mapToDouble(f -> above ? f.above() : f.below()).max().orElse(0);
  }

  private int across() {
    return size.narrow() ? 1 : Math.min(columns, facets.size());
  }

  private int rows() {
    return (facets.size() + across() - 1) / across();
  }

  private Stream<Facet> inRow(int row) {
    return facets.stream().skip((long) row * across()).limit(across());
  }

  private List<String> notes() {
    return Lettering.wrap(CAUTION, Type.LABEL, size.width() - 2 * Heading.MARGIN);
  }

  /** Refuses a picture of nothing. */
  static void some(Heading heading, List<?> things) {
    if (things.isEmpty()) {
      throw new IllegalArgumentException(
          "picture '" + heading.title() + "' has nothing to draw; give it at least one of each");
    }
  }

  /** What is said of several things, a sentence each. */
  static String sentences(Stream<String> parts) {
    return parts
        .map(part -> Character.toUpperCase(part.charAt(0)) + part.substring(1) + ".")
        .collect(Collectors.joining(" "));
  }

  /** Names joined for a description. */
  static String list(List<String> parts) {
    return parts.stream().collect(Collectors.joining("; "));
  }
}
