package broodtide.fit;

import broodtide.control.Control;
import broodtide.control.HazardSpread;
import broodtide.control.MiticideCourse;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.RandomDataGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * What is to come of each colony: how well miticides work, and how seasons after the last wash turn
 * out.
 *
 * <p>The luck of a miticide course has two parts. What differs between trials is shared by all
 * colonies of an apiary that are treated together: it hangs on the substance and on the week in
 * which the course begins. What differs between colonies of one trial hangs on the colony, on the
 * substance and on how many courses of it came before. Neither hangs on anything else: the same
 * treatment has the same luck in every plan, alone or beside others, in whatever order they are
 * written, so that plans differ by what they do.
 */
final class FutureDraws {
  private static final long SEED = 0x5EA50;
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
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
              int together = before.merge(treatment(c), 1, Integer::sum);
              double[] shared = trial(treatment(c), together, members);
              double[] own = spread(name(c) + '\n' + colony, number, members);
              luck.put(c, together(c.substance().spread(), shared, own));
            });
    return courses.stream().map(c -> luck.getOrDefault(c, new double[members])).toList();
  }

  /**
   * Both parts, weighted by how much of the spread each makes up. What little the two agree by
   * chance is taken out of the colony's own, so that the whole is as wide as it is said to be.
   */
  private static double[] together(HazardSpread spread, double[] shared, double[] own) {
    double total = Math.max(Double.MIN_NORMAL, spread.total());
    double agree = 0;
    double square = 0;
    for (int i = 0; i < own.length; i++) {
      agree += shared[i] * own[i];
      square += shared[i] * shared[i];
    }
    double slope = agree * agree < 0.5 * square * square ? agree / square : 0;
    double kept = 1 / Math.sqrt(1 - slope * slope);
    double[] z = new double[own.length];
    for (int i = 0; i < z.length; i++) {
      double apart = kept * (own[i] - slope * shared[i]);
      z[i] = (spread.trials() * shared[i] + spread.colonies() * apart) / total;
    }
    return z;
  }

  /**
   * {@return what names a treatment that hives of a yard share: the substance, and the Monday of
   * the week in which it begins}
   *
   * @param course a course
   */
  static String treatment(MiticideCourse course) {
    LocalDate monday = course.from().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    return name(course) + '\n' + monday;
  }

  /**
   * The part that colonies treated together share, standard normal.
   *
   * @param treatment what they share, see {@link #treatment}
   * @param number how many such courses there are up to this one, as a rule 1
   * @param members simulated colonies
   */
  static double[] trial(String treatment, int number, int members) {
    return spread(treatment, number, members);
  }

  /** Draws of an unknown for a season that no wash saw, standard normal. */
  static double[] of(Unknown unknown, int season, String colony, int members) {
    return spread(unknown.id() + '\n' + colony, season, members);
  }

  /**
   * Draws of what lies ahead of all washes, standard normal and even from the first member on, so
   * that fewer colonies, and those that repeat others, are as even as all. They follow the golden
   * ratio, of whose multiples no two come close.
   */
  static double[] even(Unknown unknown, String colony, int members) {
    double at = new Well19937c(key(unknown.id() + '\n' + colony, 0)).nextDouble();
    double[] z = new double[members];
    for (int i = 0; i < members; i++) {
      at = (at + GOLDEN) % 1;
      z[i] = NORMAL.inverseCumulativeProbability(Math.min(1 - 1e-9, Math.max(1e-9, at)));
    }
    return z;
  }

  private static String name(MiticideCourse course) {
    return course.substance().name();
  }

  /** The middles of equal shares of the normal distribution, dealt out by name and number. */
  private static double[] spread(String name, int number, int members) {
    int[] dealt =
        new RandomDataGenerator(new Well19937c(key(name, number)))
            .nextPermutation(members, members);
    double[] z = new double[members];
    for (int i = 0; i < members; i++) {
      z[i] = NORMAL.inverseCumulativeProbability((dealt[i] + 0.5) / members);
    }
    return z;
  }

  private static int[] key(String name, int number) {
    int[] key = new int[name.length() + 2];
    key[0] = (int) SEED;
    key[1] = number;
    for (int i = 0; i < name.length(); i++) {
      key[i + 2] = name.charAt(i);
    }
    return key;
  }
}
