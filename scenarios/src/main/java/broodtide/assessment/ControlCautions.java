package broodtide.assessment;

import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.control.Control;
import java.util.List;

/** What to beware of with a control, as its file in the library says it. */
public final class ControlCautions {
  private static final List<String> OWN_MITICIDE =
      List.of("The registered label and local law decide whether, when and how this may be used.");

  private ControlCautions() {}

  /**
   * {@return the cautions of the library's control of that kind; for a miticide that is not of the
   * library that the label decides, for any other control nothing}
   *
   * @param control a control on its days, under whatever name
   */
  public static List<String> of(Control control) {
    return Catalog.CONTROLS.names().stream()
        .map(Catalog::control)
        .filter(template -> isOf(control, template))
        .findFirst()
        .map(ControlTemplate::cautions)
        .orElse(control.course().isPresent() ? OWN_MITICIDE : List.of());
  }

  /** A miticide keeps its short name whatever the course is called. */
  private static boolean isOf(Control control, ControlTemplate template) {
    return control
        .course()
        .map(course -> course.substance().name().equals(template.name()))
        .orElseGet(() -> control.name().equals(template.title()));
  }
}
