package broodtide.study;

import broodtide.catalog.Assumptions;
import broodtide.catalog.ControlKind;
import broodtide.catalog.Referred;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.Scenario;
import broodtide.engine.StandardColony;
import broodtide.forms.Fields;
import broodtide.forms.Node;
import broodtide.forms.Placed;
import broodtide.forms.Source;
import broodtide.measure.RefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Checks of a study across its fields. Fields that could not be read are passed over. */
final class StudyChecks {
  private final Fields in;
  private boolean agree = true;

  private StudyChecks(Fields in) {
    this.in = in;
  }

  /** Whether the fields agree with each other; what does not is noted. */
  static boolean agree(Fields in) {
    StudyChecks checks = new StudyChecks(in);
    boolean spanned = checks.span();
    checks.infestation();
    if (in.given(StudyForm.SURROUNDINGS) && in.given(StudyForm.IMMIGRATION)) {
      checks.fault(in.at(StudyForm.IMMIGRATION), "stands beside surroundings; keep one of the two");
    }
    checks.names();
    checks.highs();
    List<Placed<Control>> given = in.find(StudyForm.GIVEN).orElse(List.of());
    if (spanned) {
      given.forEach(checks::insideSpan);
    }
    List<Placed<Control>> sound = checks.withoutOverlap("given", List.of(), given);
    for (Placed<StudyForm.Draft> plan : in.find(StudyForm.PLANS).orElse(List.of())) {
      if (spanned) {
        plan.value().controls().forEach(checks::insideSpan);
      }
      checks.withoutOverlap(plan.value().name(), sound, plan.value().controls());
    }
    return checks.agree;
  }

  private void fault(Node at, String message) {
    agree = false;
    boolean plain = !(at instanceof Node.Obj || at instanceof Node.Arr);
    in.in().fault(at.spot(), plain ? at.shown() : null, message);
  }

  /** Whether both days are there and in order. */
  private boolean span() {
    Optional<LocalDate> start = in.find(StudyForm.START);
    Optional<LocalDate> until = in.find(StudyForm.UNTIL);
    if (start.isEmpty() || until.isEmpty()) {
      return false;
    }
    LocalDate last = start.get().plusDays(Scenario.LONGEST - 1L);
    if (!until.get().isAfter(start.get()) || until.get().isAfter(last)) {
      fault(
          in.at(StudyForm.UNTIL),
          "expected " + start.get().plusDays(1) + " to " + last + ", after the start");
      return false;
    }
    return true;
  }

  private void infestation() {
    boolean told =
        in.given(StudyForm.WASHES)
            || in.spoilt(StudyForm.COLONY)
            || in.find(StudyForm.COLONY).map(c -> c.infestation().isPresent()).orElse(true);
    if (!told) {
      fault(
          in.at(StudyForm.COLONY),
          "nothing tells how many mites there are; give the colony an \"infestation\", mites"
              + " per 100 bees, or the study a file of \"washes\"");
    }
  }

  private void names() {
    Map<String, Integer> lines = new HashMap<>();
    for (Placed<StudyForm.Draft> plan : in.find(StudyForm.PLANS).orElse(List.of())) {
      Node at = plan.at(StudyForm.PLAN_NAME.name());
      Integer earlier = lines.putIfAbsent(plan.value().name(), at.spot().line());
      if (earlier != null) {
        fault(at, "the plan on line " + earlier + " has this name; give another");
      }
    }
  }

  private void highs() {
    Map<LocalDate, Integer> lines = new HashMap<>();
    for (Placed<StudyForm.High> day : in.find(StudyForm.HIGHS).orElse(List.of())) {
      Node at = day.at(StudyForm.HIGH_DATE.name());
      Integer earlier = lines.putIfAbsent(day.value().date(), at.spot().line());
      if (earlier != null) {
        fault(at, "the day has a high on line " + earlier + " already; remove one");
      }
    }
  }

  private void insideSpan(Placed<Control> control) {
    LocalDate start = in.need(StudyForm.START);
    LocalDate until = in.need(StudyForm.UNTIL);
    String allowed = "expected " + start + " to " + until + ", the days of the study";
    Control c = control.value();
    if (c.from().isBefore(start) || c.from().isAfter(until)) {
      fault(control.at("start", "inserted", "from", "on"), allowed);
    } else {
      ControlKind.of(c)
          .daysWithin(control)
          .forEach(
              (at, day) -> {
                if (day.isAfter(until)) {
                  fault(at, "the cut on " + day + " is never reached; " + allowed);
                }
              });
    }
  }

  /**
   * Notes each control whose brood break overlaps an earlier one.
   *
   * @return the controls that do not, those before them included
   */
  private List<Placed<Control>> withoutOverlap(
      String plan, List<Placed<Control>> before, List<Placed<Control>> controls) {
    List<Placed<Control>> sound = new ArrayList<>(before);
    for (Placed<Control> control : controls) {
      sound.add(control);
      String refusal = refusal(plan, sound);
      if (refusal != null) {
        fault(control.node(), refusal);
        sound.remove(sound.size() - 1);
      }
    }
    return sound;
  }

  private static @Nullable String refusal(String name, List<Placed<Control>> controls) {
    try {
      new Plan(name, controls.stream().map(Placed::value).toList());
      return null;
    } catch (RefusedException e) {
      return e.getMessage();
    }
  }

  /** The file of washes, which must be there. */
  static Optional<Referred<Source>> attached(Fields in) {
    String written = in.find(StudyForm.WASHES).orElse(null);
    if (written == null) {
      return Optional.empty();
    }
    Source file = in.in().lookUp(in.at(StudyForm.WASHES), () -> in.in().source().beside(written));
    if (file == null) {
      return Optional.empty();
    }
    if (!file.exists()) {
      in.fault(
          StudyForm.WASHES,
          "there is no such file "
              + file.name()
              + "; paths start at the folder of the study, remove the field if there are no"
              + " washes");
    }
    return Optional.of(new Referred<>(written, file));
  }

  /** Checks that the standard year carries a colony, and one of the size that is asked for. */
  static void colonyLives(Fields in, Study study) {
    double standard;
    try {
      standard = StandardColony.on(study.model(), study.start()).adults();
    } catch (RefusedException e) {
      in.in().fault(in.node().spot(), null, e.reason());
      return;
    }
    if (!Double.isFinite(standard)) {
      in.in().fault(in.node().spot(), null, "the standard year breaks down at these overrides");
      return;
    }
    OptionalDouble wanted = study.colony().bees(Assumptions.usual());
    if (wanted.isPresent()
        && !(wanted.getAsDouble() >= 0.01 * standard && wanted.getAsDouble() <= 5 * standard)) {
      in.in()
          .fault(
              in.at(StudyForm.COLONY).spot(),
              null,
              String.format(
                  Locale.ROOT,
                  "the colony has %.0f bees; allowed on %s in this climate is %.0f to %.0f",
                  wanted.getAsDouble(),
                  study.start(),
                  Math.ceil(0.01 * standard),
                  Math.floor(5 * standard)));
    }
  }
}
