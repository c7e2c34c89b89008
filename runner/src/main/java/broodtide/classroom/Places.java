package broodtide.classroom;

import broodtide.catalog.Catalog;
import broodtide.season.Climate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The climates that the explorer offers: those of the library, and one of the teacher's own. */
final class Places {
  private final Map<String, Climate> climates = new LinkedHashMap<>();
  private final Map<String, ClimateYear> worked = new ConcurrentHashMap<>();
  private final String first;
  private final boolean south;

  /**
   * @param first the climate shown at first; when it is not of the library it is offered too
   * @param south whether the place lies south of the equator, unless an address says otherwise
   */
  Places(Climate first, boolean south) {
    this.south = south;
    this.first = first.name();
    climates.put(first.name(), first);
    for (String name : Catalog.CLIMATES.names()) {
      climates.computeIfAbsent(name, Catalog::climate);
    }
  }

  /** Name of the climate shown at first. */
  String first() {
    return first;
  }

  /** Whether the page begins south of the equator. */
  boolean south() {
    return south;
  }

  /** Names of all climates. */
  List<String> names() {
    return climates.keySet().stream().sorted().toList();
  }

  /** A climate by name; one that there is. */
  Climate climate(String name) {
    Climate climate = climates.get(name);
    if (climate == null) {
      throw new IllegalArgumentException("no climate " + name);
    }
    return climate;
  }

  /** A climate's year, worked out when it is first asked for. */
  ClimateYear place(String name, boolean southern) {
    return worked.computeIfAbsent(
        name + southern,
        key ->
            ClimateYear.of(
                southern ? climate(name).inSouth() : climate(name),
                ExplorerState.first(southern),
                ExplorerState.last(southern)));
  }
}
