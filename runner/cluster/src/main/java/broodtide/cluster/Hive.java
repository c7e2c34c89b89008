package broodtide.cluster;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A colony with its rows, as they can stand beside one another.
 *
 * @param colony its name
 * @param yard its yard; empty when none is named
 * @param region its region; empty when none is named
 * @param climate its climate; empty when none is named
 * @param counts its washes and boards
 * @param given what it was given, what all colonies were given among it
 * @param first its first wash or treatment, on which its season begins
 * @param newest its newest wash or treatment
 * @param newestBoard the day on which its newest board was taken out; null without boards
 */
record Hive(
    String colony,
    String yard,
    String region,
    String climate,
    List<InputRow> counts,
    List<InputRow> given,
    LocalDate first,
    LocalDate newest,
    @Nullable LocalDate newestBoard)
    implements Serializable {
  /** Rows of its own that can be set aside. */
  List<RejectedRow> rejected(String column, String value, String reason) {
    return counts.stream().map(row -> row.rejected(column, value, reason)).toList();
  }

  /** The same colony where its yard stands. */
  Hive in(String otherRegion, String otherClimate) {
    return new Hive(
        colony, yard, otherRegion, otherClimate, counts, given, first, newest, newestBoard);
  }
}
