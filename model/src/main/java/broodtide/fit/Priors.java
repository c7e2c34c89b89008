package broodtide.fit;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What is believed of a colony before any wash: one prior for each unknown. Immutable.
 *
 * @param each the priors, one for every {@link Unknown}
 */
public record Priors(Map<Unknown, Prior> each) {
  /**
   * Copies the map.
   *
   * @throws IllegalArgumentException when an unknown has no prior
   */
  public Priors {
    each = Map.copyOf(each);
    for (Unknown unknown : Unknown.values()) {
      if (!each.containsKey(unknown)) {
        throw new IllegalArgumentException("no prior for " + unknown.id());
      }
    }
  }

  /** {@return the defaults, each with its source} */
  public static Priors defaults() {
    Map<Unknown, Prior> usual = new EnumMap<>(Unknown.class);
    for (Unknown unknown : Unknown.values()) {
      usual.put(unknown, unknown.usual());
    }
    return new Priors(usual);
  }

  /**
   * {@return what is believed of an unknown}
   *
   * @param unknown the unknown
   */
  public Prior of(Unknown unknown) {
    return each.getOrDefault(unknown, unknown.usual());
  }

  /**
   * {@return the same with another belief of one unknown}
   *
   * @param unknown the unknown
   * @param prior what is believed of it
   */
  public Priors with(Unknown unknown, Prior prior) {
    Map<Unknown, Prior> changed = new EnumMap<>(each);
    changed.put(unknown, prior);
    return new Priors(changed);
  }

  /**
   * {@return the prior of every unknown of a colony with a number of miticide courses, in the order
   * of a particle}
   *
   * @param courses miticide courses, 0 or more
   */
  public List<Prior> unknowns(int courses) {
    return ParticleLayout.of(courses).places().stream().map(p -> of(p.unknown())).toList();
  }

  /** What a particle in standard normal units stands for. */
  ColonyDraw draw(double[] z) {
    ColonyDraw colony = new ColonyDraw();
    int courses = ParticleLayout.courses(z.length);
    int d = 0;
    for (Unknown unknown : Unknown.values()) {
      Prior prior = of(unknown);
      int times = unknown.ofCourse() ? courses : 1;
      for (int i = 0; i < times; i++) {
        unknown.set(colony, prior.at(z[d++]));
      }
    }
    return colony;
  }
}
