package broodtide.assessment;

import broodtide.assessment.EfficacyFit.Setting;
import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.ControlTemplate.Efficacy;
import broodtide.control.Control;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.engine.ColonyModel;
import java.time.LocalDate;
import java.util.List;

/** The shipped climates and controls as the tests want them. */
public final class Shipped {
  private Shipped() {}

  public static ColonyModel model(String climate) {
    return ColonyModel.in(Catalog.climate(climate));
  }

  /** Names of all controls of a kind, in order. */
  static List<String> controls(Class<? extends Control> kind) {
    return Catalog.CONTROLS.names().stream()
        .filter(name -> kind.isInstance(Catalog.control(name).usual()))
        .toList();
  }

  /** A control with its usual values, of a kind that is known beforehand. */
  static <A extends Control> A control(Class<A> kind, String name) {
    return kind.cast(Catalog.control(name).usual());
  }

  static Miticide substance(String name) {
    return control(MiticideCourse.class, name).substance();
  }

  /** The course as the file gives it, begun on a day. */
  static MiticideCourse course(String name, LocalDate start) {
    return control(MiticideCourse.class, name).named(name).startingOn(start);
  }

  static Efficacy efficacy(String name) {
    ControlTemplate control = Catalog.control(name);
    return control.efficacy().orElseThrow(() -> new AssertionError(name + " states no efficacy"));
  }

  /** The setting in which the control's efficacy was measured. */
  static Setting setting(String name) {
    return Setting.of(efficacy(name).setting());
  }
}
