package broodtide.cluster;

import broodtide.assessment.RegionCount;
import broodtide.results.SheetColumns.Column;
import broodtide.results.SheetColumns.Kind;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.spark.api.java.JavaRDD;
import scala.Tuple2;

/**
 * How many hives of each region are over the treatment threshold today, and how many are lost by
 * spring with each plan if all hives that can do so carry it out. Yards stand alone beside one
 * another; within a yard hives go together as {@link broodtide.assessment.ApiaryCount} says.
 */
final class Regions {
  /** One row for each region and plan. */
  static final List<Column> SUMMARY =
      List.of(
          new Column("region", Kind.TEXT),
          new Column("counted", Kind.TEXT),
          new Column("plan", Kind.TEXT),
          new Column("hives", Kind.COUNT),
          new Column("mean", Kind.NUMBER),
          new Column("q05", Kind.COUNT),
          new Column("median", Kind.COUNT),
          new Column("q95", Kind.COUNT));

  /** One row for each count that has a chance. */
  static final List<Column> CHANCES =
      List.of(
          new Column("region", Kind.TEXT),
          new Column("counted", Kind.TEXT),
          new Column("plan", Kind.TEXT),
          new Column("count", Kind.COUNT),
          new Column("chance", Kind.NUMBER));

  /** Chances below this are left out of the table. */
  private static final double LEAST = 1e-4;

  private static final double LOW = 0.05;
  private static final double HALF = 0.5;
  private static final double HIGH = 0.95;

  private static final String OVER = "over-threshold-today";
  private static final String LOST = "lost-by-spring";

  private Regions() {}

  /**
   * What is counted.
   *
   * @param region where
   * @param what {@value #OVER} or {@value #LOST}
   * @param plan the plan; empty where it matters to no count
   */
  record Key(String region, String what, String plan) implements Serializable, Comparable<Key> {
    private static final Comparator<Key> ORDER =
        Comparator.comparing(Key::region)
            .thenComparing(Key::what, Comparator.reverseOrder())
            .thenComparing(Key::plan);

    @Override
    public int compareTo(Key other) {
      return ORDER.compare(this, other);
    }
  }

  /**
   * The count of one yard.
   *
   * @param yard the yard, by which counts are put in order
   * @param count its count
   */
  record Part(YardKey yard, RegionCount count) implements Serializable {}

  /** The counts of every region. */
  static JavaRDD<Tuple2<Key, RegionCount>> of(JavaRDD<YardResult> yards, int partitions) {
    Map<String, Set<String>> plans = plans(yards);
    return yards
        .flatMapToPair(yard -> parts(yard, plans))
        .groupByKey(partitions)
        .map(group -> new Tuple2<>(group._1(), together(group._2())))
        .sortBy(Tuple2::_1, true, 1);
  }

  private static Map<String, Set<String>> plans(JavaRDD<YardResult> yards) {
    Map<String, Set<String>> plans = new TreeMap<>();
    yards
        .flatMap(y -> y.lost().keySet().stream().map(p -> new Tuple2<>(y.region(), p)).iterator())
        .distinct()
        .collect()
        .forEach(t -> plans.computeIfAbsent(t._1(), r -> new TreeSet<>()).add(t._2()));
    return plans;
  }

  private static Iterator<Tuple2<Key, Part>> parts(
      YardResult yard, Map<String, Set<String>> plans) {
    List<Tuple2<Key, Part>> out = new ArrayList<>();
    RegionCount over = yard.over();
    if (over != null) {
      out.add(new Tuple2<>(new Key(yard.region(), OVER, ""), new Part(yard.key(), over)));
    }
    RegionCount waiting = yard.lost().get(yard.waiting());
    if (waiting != null) {
      for (String plan : plans.getOrDefault(yard.region(), Set.of())) {
        out.add(
            new Tuple2<>(
                new Key(yard.region(), LOST, plan),
                new Part(yard.key(), yard.lost().getOrDefault(plan, waiting))));
      }
    }
    return out.iterator();
  }

  private static RegionCount together(Iterable<Part> parts) {
    List<Part> sorted = new ArrayList<>();
    parts.forEach(sorted::add);
    sorted.sort(Comparator.comparing(Part::yard));
    return sorted.stream().map(Part::count).reduce(RegionCount.NONE, RegionCount::and);
  }

  static TableRow summary(Key key, RegionCount count) {
    return TableRow.of(
        key.region(),
        key.what(),
        key.plan(),
        count.hives(),
        count.mean(),
        count.quantile(LOW),
        count.quantile(HALF),
        count.quantile(HIGH));
  }

  static Iterator<TableRow> chances(Key key, RegionCount count) {
    double[] chances = count.distribution();
    List<TableRow> out = new ArrayList<>();
    for (int k = 0; k < chances.length; k++) {
      if (chances[k] >= LEAST) {
        out.add(TableRow.of(key.region(), key.what(), key.plan(), k, chances[k]));
      }
    }
    return out.iterator();
  }
}
