package broodtide.fit;

import broodtide.control.Control;
import broodtide.control.MiticideCourse;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.RandomDataGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * How well miticides to come work in each colony. The luck of a course hangs on its substance and
 * on how many courses of it came before, on nothing else: the same treatment has the same luck in
 * every plan, alone or beside others, in whatever order they are written and on whatever day it
 * begins, so that plans differ by what they do.
 */
final class FutureDraws {
  private static final long SEED = 0x5EA50;
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  private FutureDraws() {}

  /**
   * Standard normal luck of each course among some controls.
   *
   * @param controls controls to come
   * @param members colonies
   * @return by course in the order of the controls, then by colony; each course's luck is spread
   *     evenly over the colonies
   */
  static List<double[]> of(List<Control> controls, int members) {
    List<MiticideCourse> courses = new ArrayList<>();
    for (Control c : controls) {
      c.course().ifPresent(courses::add);
    }
    Map<MiticideCourse, double[]> luck = new HashMap<>();
    Map<String, Integer> before = new HashMap<>();
    courses.stream()
        .sorted(Comparator.comparing(MiticideCourse::from))
        .forEach(
            c -> luck.put(c, spread(name(c), before.merge(name(c), 1, Integer::sum), members)));
    return courses.stream().map(c -> luck.getOrDefault(c, new double[members])).toList();
  }

  private static String name(MiticideCourse course) {
    return course.substance().name();
  }

  /** The middles of equal shares of the normal distribution, dealt out by name and number. */
  private static double[] spread(String name, int number, int members) {
    int[] key = new int[name.length() + 2];
    key[0] = (int) SEED;
    key[1] = number;
    for (int i = 0; i < name.length(); i++) {
      key[i + 2] = name.charAt(i);
    }
    int[] dealt = new RandomDataGenerator(new Well19937c(key)).nextPermutation(members, members);
    double[] z = new double[members];
    for (int i = 0; i < members; i++) {
      z[i] = NORMAL.inverseCumulativeProbability((dealt[i] + 0.5) / members);
    }
    return z;
  }
}
