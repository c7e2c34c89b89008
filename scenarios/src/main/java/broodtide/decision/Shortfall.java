package broodtide.decision;

import broodtide.assessment.Obstacles;
import broodtide.catalog.ControlKind;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.Obstacle;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/** Things to check when a treatment fell short, those that the record speaks of first. */
public final class Shortfall {
  /** Days after the end of a treatment in which mites from cells may still come out. */
  static final int EARLY = 12;

  /** Days after the end of a treatment from which growth and arrivals say as much as it does. */
  static final int LATE = 45;

  /** With fewer mites before, one wash shows a reduction poorly. Choice. */
  private static final int FEW = 5;

  private Shortfall() {}

  /**
   * {@return what the dates of treatment and washes themselves put in doubt, in sentences}
   *
   * @param check the treatment as its washes judge it
   */
  public static List<String> doubts(TreatmentCheck check) {
    MiticideCourse course = check.treatment();
    List<String> out = new ArrayList<>();
    long since = ChronoUnit.DAYS.between(course.to(), check.after().date());
    if (since <= 0) {
      out.add(
          "the later wash was taken "
              + (1 - since)
              + " days before the treatment was over; wash again after "
              + course.to().plusDays(EARLY));
    } else if (since < EARLY) {
      out.add(
          "the later wash came only "
              + since
              + " days after the treatment ended, when mites may still come out of cells");
    } else if (since > LATE) {
      out.add(
          "the later wash came "
              + since
              + " days after the treatment ended; growth and reinvasion since then may hide what it"
              + " did");
    }
    if (check.before().mites() < FEW) {
      out.add(few(check));
    }
    return out;
  }

  private static String few(TreatmentCheck check) {
    int mites = check.before().mites();
    String found =
        mites == 0
            ? "no mite was found in the wash before"
            : mites == 1
                ? "only one mite was found in the wash before"
                : "only " + mites + " mites were found in the wash before";
    return check.verdict() == TreatmentCheck.Verdict.CANNOT_TELL
        ? found + ", too few mites to tell whether they fell"
        : found + ", so the share that the treatment took is known roughly";
  }

  /**
   * {@return what else can make a treatment fall short, the most easily checked first}
   *
   * @param check the treatment as its washes judge it
   * @param template the control of the library
   */
  public static List<String> reasons(TreatmentCheck check, ControlTemplate template) {
    MiticideCourse course = check.treatment();
    List<String> out = new ArrayList<>();
    ControlKind.of(course).obstacles(course, check.colony().model().climate()).stream()
        .filter(o -> o.kind() == Obstacle.Kind.COLD || o.kind() == Obstacle.Kind.WARM)
        .forEach(o -> out.add(o.words()));
    boolean brood =
        Obstacles.cappedBrood(
            course.from(),
            check.colony().withGiven(Plan.waiting("given")),
            check.colony().model().climate());
    if (course.substance().inCells() == 0 && brood) {
      out.add("brood: it does not reach mites in capped cells, and there was capped brood");
    }
    out.add("application and dose: number, place and age of what was put in, and for how long");
    out.add("weather on the days: too cool or too hot for it to give off or to act as it should");
    out.add("reinvasion: mites brought in since by robbing or drifting; wash the neighbours");
    out.add("the washes: the same kind of frame, shaken as long, bees counted");
    String substance = template.substance().orElse("it");
    out.add(
        "resistance of the mites to "
            + substance
            + " is one possibility among these; a test on live mites can tell, a wash cannot");
    return out;
  }
}
