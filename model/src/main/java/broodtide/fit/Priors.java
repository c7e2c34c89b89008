package broodtide.fit;

import broodtide.control.Miticide;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What is believed of a colony before any wash: one prior for each unknown. Immutable.
 *
 * @param each the priors, one for every {@link Unknown}; the spread of an efficacy factor counts in
 *     that of the course's own substance, so that 1 leaves it as its trials show
 * @param efficacies what is believed instead of the efficacy factor of single miticides, by their
 *     short name, as where mites are known to resist one
 * @param bias what one's own records say of growth to come, on top of its prior
 */
public record Priors(Map<Unknown, Prior> each, Map<String, Prior> efficacies, GrowthBias bias) {
  /**
   * Copies the maps.
   *
   * @throws IllegalArgumentException when an unknown has no prior
   */
  public Priors {
    each = Map.copyOf(each);
    efficacies = Map.copyOf(efficacies);
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
    return new Priors(usual, Map.of(), GrowthBias.NONE);
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
    return new Priors(changed, efficacies, bias);
  }

  /**
   * {@return the same with another belief of how single miticides act}
   *
   * @param other efficacy factors by short name of the miticide
   */
  public Priors withEfficacies(Map<String, Prior> other) {
    return new Priors(each, other, bias);
  }

  /**
   * {@return the same with what one's own records say of growth to come}
   *
   * @param learned the bias; it takes the place of one that was known before
   */
  public Priors with(GrowthBias learned) {
    return new Priors(each, efficacies, learned);
  }

  /**
   * {@return what is believed of an unknown in days that no wash saw: growth with the bias of one's
   * own records, all else as ever}
   *
   * @param unknown the unknown
   */
  Prior toCome(Unknown unknown) {
    return unknown.growth() ? bias.on(of(unknown)) : of(unknown);
  }

  /** The share of its variance that hives of a yard share in days that no wash saw. */
  double sharedToCome(Unknown unknown) {
    return unknown.growth() ? bias.shared(of(unknown), unknown.shared()) : unknown.shared();
  }

  /** The share of its variance that hives of all yards share in days that no wash saw. */
  double commonToCome(Unknown unknown) {
    return unknown.growth() ? bias.common(of(unknown)) : 0;
  }

  /**
   * {@return the efficacy factor of a course with a miticide}
   *
   * @param substance what is given; its trials say how far its hazards differ
   */
  public Prior efficacy(Miticide substance) {
    Prior usual = of(Unknown.EFFICACY_FACTOR);
    Prior own = efficacies.get(substance.name());
    return own != null
        ? own
        : usual.with(usual.median(), Math.min(5, usual.logSd() * substance.spread().total()));
  }

  /** What is believed of what stands in a place of a particle. */
  Prior at(ParticleLayout.Place place, List<Miticide> courses) {
    if (place.unknown().ofCourse()) {
      return efficacy(courses.get(place.course()));
    }
    return place.unknown().ahead() ? toCome(place.unknown()) : of(place.unknown());
  }

  /**
   * {@return the prior of every unknown of a colony with its miticide courses, within one season of
   * the bees, in the order of a particle}
   *
   * @param courses the substance of each miticide course, in the order of the plan
   */
  public List<Prior> unknowns(List<Miticide> courses) {
    return ParticleLayout.of(courses, 1).places().stream()
        .map(place -> at(place, courses))
        .toList();
  }

  /**
   * What a particle in standard normal units stands for.
   *
   * @param z one figure for each place; what lies ahead may be left out
   */
  ColonyDraw draw(double[] z, ParticleLayout layout) {
    ColonyDraw colony = new ColonyDraw(of(Unknown.REPRODUCTION_FACTOR).median());
    for (int d = 0; d < z.length; d++) {
      ParticleLayout.Place place = layout.places().get(d);
      place.unknown().set(colony, place.season(), at(place, layout.courses()).at(z[d]));
    }
    return colony;
  }
}
