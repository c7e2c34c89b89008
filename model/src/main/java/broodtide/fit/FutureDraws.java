package broodtide.fit;

import broodtide.control.Control;
import broodtide.control.HazardSpread;
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
 * How well miticides to come work in each colony. The luck of a course has two parts. What differs
 * between trials is shared by all colonies of an apiary that are treated together; it hangs on the
 * substance and on how many courses of it came before. What differs between colonies of one trial
 * hangs on the colony, too. Neither hangs on anything else: the same treatment has the same luck in
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
   * @param colony name of the colony
   * @param members simulated colonies
   * @return by course in the order of the controls, then by simulated colony
   */
  static List<double[]> of(List<Control> controls, String colony, int members) {
    List<MiticideCourse> courses = new ArrayList<>();
    for (Control c : controls) {
      c.course().ifPresent(courses::add);
    }
    Map<MiticideCourse, double[]> luck = new HashMap<>();
    Map<String, Integer> before = new HashMap<>();
    courses.stream()
        .sorted(Comparator.comparing(MiticideCourse::from))
        .forEach(
            c -> {
              int number = before.merge(name(c), 1, Integer::sum);
              luck.put(c, together(c.substance().spread(), name(c), number, colony, members));
            });
    return courses.stream().map(c -> luck.getOrDefault(c, new double[members])).toList();
  }

  /** Both parts, weighted by how much of the spread each makes up. */
  private static double[] together(
      HazardSpread spread, String name, int number, String colony, int members) {
    double[] shared = trial(name, number, members);
    double[] own = spread(name + '\n' + colony, number, members);
    double total = Math.max(Double.MIN_NORMAL, spread.total());
    double[] z = new double[members];
    for (int i = 0; i < members; i++) {
      z[i] = (spread.trials() * shared[i] + spread.colonies() * own[i]) / total;
    }
    return z;
  }

  /**
   * The part that colonies treated together share, standard normal.
   *
   * @param name name of the substance
   * @param number how many courses of it there are up to this one
   * @param members simulated colonies
   */
  static double[] trial(String name, int number, int members) {
    return spread(name, number, members);
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
