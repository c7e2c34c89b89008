package broodtide.assessment;

import broodtide.catalog.Catalog;
import broodtide.catalog.ControlKind;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.Handling;
import broodtide.catalog.HiveVisit;
import broodtide.control.Control;
import broodtide.control.Plan;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** What a control asks of the beekeeper, as its file in the library says it. */
public final class ControlCautions {
  private static final List<String> OWN_MITICIDE =
      List.of("The registered label and local law decide whether, when and how this may be used.");

  /** Strips that are forgotten do more harm than a look for nothing. */
  private static final Handling UNKNOWN = new Handling(false, true);

  private ControlCautions() {}

  /**
   * {@return the cautions of the library's control of that kind; for a miticide that is not of the
   * library that the label decides, for any other control nothing}
   *
   * @param control a control on its days, under whatever name
   */
  public static List<String> of(Control control) {
    return template(control)
        .map(ControlTemplate::cautions)
        .orElse(control.course().isPresent() ? OWN_MITICIDE : List.of());
  }

  /**
   * {@return the days on which a beekeeper does something to the hive for a control, in order; of a
   * miticide that is not of the library something is assumed to come out at the end}
   *
   * @param control a control on its days, under whatever name
   */
  public static List<HiveVisit> visits(Control control) {
    return ControlKind.of(control).visits(control, handling(control));
  }

  /**
   * {@return whether an acid is given in one of the plans, as the library says it}
   *
   * @param plans the plans, none for no acid
   */
  public static boolean acid(Collection<Plan> plans) {
    return plans.stream()
        .flatMap(plan -> plan.controls().stream())
        .anyMatch(control -> handling(control).acid());
  }

  private static Handling handling(Control control) {
    return template(control).map(ControlTemplate::handling).orElse(UNKNOWN);
  }

  private static Optional<ControlTemplate> template(Control control) {
    return Catalog.CONTROLS.names().stream()
        .map(Catalog::control)
        .filter(template -> isOf(control, template))
        .findFirst();
  }

  /** A miticide keeps its short name whatever the course is called. */
  private static boolean isOf(Control control, ControlTemplate template) {
    return control
        .course()
        .map(course -> course.substance().name().equals(template.name()))
        .orElseGet(() -> control.name().equals(template.title()));
  }
}
