package broodtide.assessment;

import broodtide.assessment.EfficacyFit.Setting;
import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.ControlTemplate.Action;
import broodtide.catalog.ControlTemplate.Efficacy;
import broodtide.catalog.ControlTemplate.Treatment;
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

  /** Names of all controls that do a thing, in order. */
  static List<String> controls(Class<? extends Action> kind) {
    return Catalog.CONTROLS.names().stream()
        .filter(name -> kind.isInstance(Catalog.control(name).action()))
        .toList();
  }

  /** What a control does, of a kind that is known beforehand. */
  static <A extends Action> A action(Class<A> kind, String name) {
    return kind.cast(Catalog.control(name).action());
  }

  static Miticide substance(String name) {
    return action(Treatment.class, name).miticide();
  }

  /** The course as the file gives it, begun on a day. */
  static MiticideCourse course(String name, LocalDate start) {
    return action(Treatment.class, name).at(name, start);
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
