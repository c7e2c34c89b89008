package broodtide.cluster;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What has to be known of all yards before the first is worked out.
 *
 * @param hives how many hives there are
 * @param climates their climates
 * @param newest the newest wash or treatment; null where there is no hive
 * @param newestBoard the newest board; null without boards
 */
record YardSurvey(
    int hives,
    SortedSet<String> climates,
    @Nullable LocalDate newest,
    @Nullable LocalDate newestBoard)
    implements Serializable {
  static final YardSurvey NONE = new YardSurvey(0, new TreeSet<>(), null, null);

  YardSurvey and(Yard yard) {
    SortedSet<String> all = new TreeSet<>(climates);
    all.add(yard.climate());
    LocalDate day = newest;
    LocalDate board = newestBoard;
    for (Hive hive : yard.hives()) {
      day = later(day, hive.newest());
      board = later(board, hive.newestBoard());
    }
    return new YardSurvey(hives + yard.hives().size(), all, day, board);
  }

  YardSurvey and(YardSurvey other) {
    SortedSet<String> both = new TreeSet<>(climates);
    both.addAll(other.climates);
    return new YardSurvey(
        hives + other.hives,
        both,
        later(newest, other.newest),
        later(newestBoard, other.newestBoard));
  }

  private static @Nullable LocalDate later(@Nullable LocalDate a, @Nullable LocalDate b) {
    if (a == null || b == null) {
      return a == null ? b : a;
    }
    return a.isAfter(b) ? a : b;
  }
}
