package broodtide.fit;

import broodtide.wash.Wash;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/** Washes of one colony in order of date, cut where a treatment may have broken the growth. */
final class Segments {
  /** Which way a likelihood without a maximum rises. */
  enum Slope {
    /** It has a maximum. */
    FINITE,
    /** It rises with the growth rate without end. */
    UP,
    /** It rises against the growth rate without end. */
    DOWN,
    /** It does not depend on the growth rate. */
    NONE
  }

  private final List<List<Wash>> all = new ArrayList<>();

  /**
   * @param washes washes in any order
   * @param breaks days of treatment; washes of the same day count as before it
   */
  Segments(List<Wash> washes, List<LocalDate> breaks) {
    List<Wash> sorted = new ArrayList<>(washes);
    sorted.sort(Comparator.comparing(Wash::date));
    TreeSet<LocalDate> cuts = new TreeSet<>(breaks);
    List<Wash> current = new ArrayList<>();
    for (Wash wash : sorted) {
      if (!current.isEmpty()) {
        LocalDate before = current.get(current.size() - 1).date();
        if (!cuts.subSet(before, wash.date()).isEmpty()) {
          all.add(current);
          current = new ArrayList<>();
        }
      }
      current.add(wash);
    }
    if (!current.isEmpty()) {
      all.add(current);
    }
  }

  /** Segments in which mites were found; the others say nothing of growth at a finite level. */
  List<List<Wash>> withMites() {
    return all.stream().filter(s -> s.stream().anyMatch(w -> w.mites() > 0)).toList();
  }

  /** The last segment. */
  List<Wash> last() {
    return all.get(all.size() - 1);
  }

  /** Days that the longest segment spans. */
  double longest() {
    return all.stream()
        .mapToDouble(s -> ChronoUnit.DAYS.between(first(s), last(s)))
        .max()
        .orElse(0);
  }

  /** Whether the likelihood has a maximum over the growth rate. */
  Slope slope() {
    boolean up = true;
    boolean down = true;
    boolean any = false;
    for (List<Wash> segment : withMites()) {
      if (first(segment).equals(last(segment))) {
        continue;
      }
      any = true;
      up &= onlyOn(segment, last(segment));
      down &= onlyOn(segment, first(segment));
    }
    if (!any) {
      return Slope.NONE;
    }
    return up ? Slope.UP : down ? Slope.DOWN : Slope.FINITE;
  }

  /** Days from the day with the most mites of a segment, where its level is measured. */
  static double days(List<Wash> segment, LocalDate date) {
    Wash most = segment.get(0);
    for (Wash wash : segment) {
      most = wash.mites() > most.mites() ? wash : most;
    }
    return ChronoUnit.DAYS.between(most.date(), date);
  }

  private static boolean onlyOn(List<Wash> segment, LocalDate day) {
    return segment.stream().allMatch(w -> w.mites() == 0 || w.date().equals(day));
  }

  private static LocalDate first(List<Wash> segment) {
    return segment.get(0).date();
  }

  private static LocalDate last(List<Wash> segment) {
    return segment.get(segment.size() - 1).date();
  }
}
