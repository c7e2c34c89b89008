package broodtide.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which unknown stands where in a particle: in the order of {@link Unknown}, those of courses once
 * for each course in the order of the plan.
 *
 * @param places what stands in each place
 */
record ParticleLayout(List<Place> places) {
  private static final int OF_COURSE =
      Math.toIntExact(Arrays.stream(Unknown.values()).filter(Unknown::ofCourse).count());
  private static final int OF_COLONY = Unknown.values().length - OF_COURSE;

  /**
   * What stands in one place.
   *
   * @param unknown the unknown
   * @param course number of its course from 0, or -1 when it is the colony's
   */
  record Place(Unknown unknown, int course) {}

  /** The places for a number of miticide courses. */
  static ParticleLayout of(int courses) {
    List<Place> places = new ArrayList<>();
    for (Unknown unknown : Unknown.values()) {
      if (unknown.ofCourse()) {
        for (int c = 0; c < courses; c++) {
          places.add(new Place(unknown, c));
        }
      } else {
        places.add(new Place(unknown, -1));
      }
    }
    return new ParticleLayout(List.copyOf(places));
  }

  /** Number of courses of a particle of some length. */
  static int courses(int length) {
    return (length - OF_COLONY) / OF_COURSE;
  }
}
