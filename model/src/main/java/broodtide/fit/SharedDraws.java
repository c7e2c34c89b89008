package broodtide.fit;

import broodtide.control.Control;
import broodtide.control.HazardSpread;
import broodtide.control.MiticideCourse;
import broodtide.engine.Scenario;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * One thing of which colonies of a yard share a part, as one colony's simulated colonies drew it:
 * how mites multiply in a season, how many come in late in it, how well a substance works in a
 * week. Each colony is read from its own washes alone; what is shared says how likely it is that
 * several go wrong together.
 *
 * @param what what it is, alike for all colonies that share it
 * @param share share of its variance that colonies of a yard share, 0 to 1
 * @param common share of its variance that colonies of all yards share, 0 to {@code share}: the
 *     bias of one's own forecasts
 * @param draws by simulated colony; only their order counts
 * @since 0.2.0
 */
@SuppressWarnings("ArrayRecordComponent") // thousands of figures, read only, never compared
public record SharedDraws(String what, double share, double common, double[] draws) {
  /** Days into a season after which its own growth begins to count; two generations. Choice. */
  private static final int COUNTS_AFTER = 40;

  /**
   * {@return what matters of it to the days between the last wash and a day, in an order of its own
   * that is the same for all colonies}
   *
   * @param posterior the colonies
   * @param season what they are played through; its plan begins with the past's controls
   * @param day a day of the season
   */
  public static List<SharedDraws> of(SeasonPosterior posterior, Scenario season, LocalDate day) {
    BeeYears years = BeeYears.of(season, posterior.lastWash());
    List<SharedDraws> out = new ArrayList<>();
    boolean southern = season.model().climate().southern();
    LocalDate seen = posterior.lastWash();
    int now = BeeYears.year(southern, seen);
    Unknown ahead = Unknown.GROWTH_TO_COME;
    toCome(out, ahead, now, posterior, years.seen());
    Unknown soFar = Unknown.REPRODUCTION_FACTOR;
    add(out, soFar, soFar.shared(), 0, now, posterior, years.seen());
    for (int s = years.seen(); s < years.seasons(); s++) {
      LocalDate begins = s == 0 ? season.start() : years.starts().get(s - 1);
      int year = BeeYears.year(southern, begins);
      if (s > years.seen() && begins.plusDays(COUNTS_AFTER).isBefore(day)) {
        toCome(out, soFar, year, posterior, s);
      }
      if (years.late(s, seen, day)) {
        Unknown late = Unknown.LATE_REINVASION;
        add(out, late, late.shared(), 0, year, posterior, s);
      }
    }
    courses(out, posterior, season, day);
    return out;
  }

  private static void toCome(
      List<SharedDraws> out, Unknown unknown, int year, SeasonPosterior posterior, int season) {
    Priors priors = posterior.priors();
    double share = priors.sharedToCome(unknown);
    add(out, unknown, share, priors.commonToCome(unknown), year, posterior, season);
  }

  private static void add(
      List<SharedDraws> out,
      Unknown unknown,
      double share,
      double common,
      int year,
      SeasonPosterior posterior,
      int season) {
    double[] draws = posterior.draws(unknown, season);
    out.add(new SharedDraws(unknown.id() + ' ' + year, share, common, draws));
  }

  /** Courses since the last wash; what one before did, the washes after it have shown. */
  private static void courses(
      List<SharedDraws> out, SeasonPosterior posterior, Scenario season, LocalDate day) {
    List<Control> controls = season.plan().controls();
    List<double[]> luck = posterior.luck(season);
    int c = 0;
    for (Control control : controls) {
      if (control.course().isEmpty()) {
        continue;
      }
      MiticideCourse course = control.course().get();
      HazardSpread spread = course.substance().spread();
      if (!course.from().isBefore(posterior.lastWash())
          && course.from().isBefore(day)
          && spread.trials() > 0) {
        double share = spread.trials() * spread.trials() / (spread.total() * spread.total());
        out.add(new SharedDraws(FutureDraws.treatment(course), share, 0, luck.get(c)));
      }
      c++;
    }
  }
}
