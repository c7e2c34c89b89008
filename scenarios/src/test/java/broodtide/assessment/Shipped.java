package broodtide.assessment;

import broodtide.assessment.EfficacyFit.Setting;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.ControlTemplate.Action;
import broodtide.catalog.ControlTemplate.Efficacy;
import broodtide.catalog.ControlTemplate.Treatment;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.engine.ColonyModel;
import broodtide.lesson.Library;
import java.time.LocalDate;
import java.util.List;

/** The shipped climates and controls as the tests want them. */
final class Shipped {
  private Shipped() {}

  static ColonyModel model(String climate) {
    return ColonyModel.in(Library.climate(climate));
  }

  /** Names of all controls that do a thing, in order. */
  static List<String> controls(Class<? extends Action> kind) {
    return Library.names(Library.Shelf.CONTROLS).stream()
        .filter(name -> kind.isInstance(Library.control(name).action()))
        .toList();
  }

  /** What a control does, of a kind that is known beforehand. */
  static <A extends Action> A action(Class<A> kind, String name) {
    return kind.cast(Library.control(name).action());
  }

  static Miticide substance(String name) {
    return action(Treatment.class, name).miticide();
  }

  /** The course as the file gives it, begun on a day. */
  static MiticideCourse course(String name, LocalDate start) {
    return action(Treatment.class, name).at(name, start);
  }

  static Efficacy efficacy(String name) {
    ControlTemplate control = Library.control(name);
    return control.efficacy().orElseThrow(() -> new AssertionError(name + " states no efficacy"));
  }

  /** The setting in which the control's efficacy was measured. */
  static Setting setting(String name) {
    return Setting.of(efficacy(name).setting());
  }
}
