package broodtide.cluster;

import broodtide.catalog.Catalog;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What came of the colonies of one yard. A yard stands in one region and one climate: those that
 * the first of its rows names that names any. A colony whose rows say otherwise is set aside.
 *
 * @param yard the yard; null when no colony of it can be used
 * @param rejected rejected rows of colonies
 */
record YardRows(@Nullable Yard yard, List<RejectedRow> rejected) implements Serializable {
  /**
   * Judges the colonies of one yard together.
   *
   * @param usualClimate the climate where none is named; empty for none
   */
  static YardRows of(YardKey key, List<Hive> hives, String usualClimate) {
    List<Hive> byPlace =
        hives.stream()
            .sorted(Comparator.comparing(h -> h.counts().get(0), InputRow.BY_PLACE))
            .toList();
    List<RejectedRow> rejected = new ArrayList<>();
    String region = first(byPlace, Hive::region);
    String named = first(byPlace, Hive::climate);
    String climate = named.isEmpty() ? usualClimate : named;
    List<Hive> kept = new ArrayList<>();
    for (Hive hive : byPlace) {
      if (!agrees(hive.region(), region)) {
        rejected.addAll(elsewhere(hive, "region", hive.region(), region));
      } else if (!agrees(hive.climate(), named)) {
        rejected.addAll(elsewhere(hive, "climate", hive.climate(), named));
      } else if (climate.isEmpty()) {
        rejected.addAll(
            hive.rejected(
                "climate",
                "",
                "no climate is named; write it in the column climate, or give --climate"));
      } else if (!named.isEmpty() && !Catalog.CLIMATES.names().contains(named)) {
        rejected.addAll(
            hive.rejected(
                "climate", named, "choose one of " + String.join(", ", Catalog.CLIMATES.names())));
      } else {
        kept.add(hive.in(region, climate));
      }
    }
    kept.sort(Comparator.comparing(Hive::colony));
    return new YardRows(
        kept.isEmpty() ? null : new Yard(key, region, climate, List.copyOf(kept)), rejected);
  }

  private static boolean agrees(String own, String held) {
    return own.isEmpty() || own.equals(held);
  }

  private static List<RejectedRow> elsewhere(Hive hive, String column, String own, String held) {
    return hive.rejected(
        column,
        own,
        "yard \""
            + hive.yard()
            + "\" stands in \""
            + held
            + "\" on an earlier row; expected one "
            + column
            + " for each yard; give yards of the same name names of their own");
  }

  private static String first(List<Hive> hives, Function<Hive, String> what) {
    return hives.stream().map(what).filter(w -> !w.isEmpty()).findFirst().orElse("");
  }
}
