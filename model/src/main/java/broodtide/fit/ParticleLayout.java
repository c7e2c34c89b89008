package broodtide.fit;

import broodtide.control.Miticide;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which unknown stands where in a particle: in the order of {@link Unknown}, those of courses once
 * for each course in the order of the plan, those of seasons once for each season in which washes
 * can tell of them. Last come those that lie ahead of the washes, which no sampler needs to move.
 *
 * @param places what stands in each place
 * @param courses the substance of each course
 */
record ParticleLayout(List<Place> places, List<Miticide> courses) {
  /**
   * What stands in one place.
   *
   * @param unknown the unknown
   * @param course number of its course from 0, or -1 when it is not of a course
   * @param season number of its season from 0; 0 as well when it is not of a season
   */
  record Place(Unknown unknown, int course, int season) {}

  /** The places for miticide courses and for all seasons of a run. */
  static ParticleLayout of(List<Miticide> courses, int seasons) {
    return of(courses, seasons, (unknown, season) -> true);
  }

  /** The places for the courses of a record and the seasons that its washes saw. */
  static ParticleLayout of(List<Miticide> courses, BeeYears years, LocalDate lastWash) {
    return of(
        courses, years.seen() + 1, (unknown, season) -> unknown.seen(years, season, lastWash));
  }

  @FunctionalInterface
  private interface Seen {
    boolean in(Unknown unknown, int season);
  }

  private static ParticleLayout of(List<Miticide> courses, int seasons, Seen seen) {
    List<Place> places = new ArrayList<>();
    for (Unknown unknown : Unknown.values()) {
      if (!unknown.ahead()) {
        add(places, unknown, courses.size(), seasons, seen);
      }
    }
    for (Unknown unknown : Unknown.values()) {
      if (unknown.ahead()) {
        places.add(new Place(unknown, -1, 0));
      }
    }
    return new ParticleLayout(List.copyOf(places), List.copyOf(courses));
  }

  private static void add(
      List<Place> places, Unknown unknown, int courses, int seasons, Seen seen) {
    if (unknown.ofCourse()) {
      for (int c = 0; c < courses; c++) {
        places.add(new Place(unknown, c, 0));
      }
    } else {
      for (int s = 0; s < (unknown.ofSeason() ? seasons : 1); s++) {
        if (seen.in(unknown, s)) {
          places.add(new Place(unknown, -1, s));
        }
      }
    }
  }

  /** Number of an unknown's place, or -1 where it has none. */
  int indexOf(Unknown unknown, int course, int season) {
    return places.indexOf(new Place(unknown, course, unknown.ofSeason() ? season : 0));
  }

  /** How many places a sampler moves; the rest lie ahead. */
  int sampled() {
    return (int) places.stream().filter(p -> !p.unknown().ahead()).count();
  }

  /** Most courses in a particle of some length that a sampler moves, in a number of seasons. */
  static int mostCourses(int length, int seasons) {
    int fixed =
        Arrays.stream(Unknown.values())
            .filter(u -> !u.ofCourse() && !u.ahead())
            .mapToInt(u -> u.ofSeason() ? seasons : 1)
            .sum();
    long each =
        Arrays.stream(Unknown.values()).filter(Unknown::ofCourse).filter(u -> !u.ahead()).count();
    return Math.toIntExact((length - fixed) / each);
  }
}
