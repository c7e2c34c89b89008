package broodtide.assessment;

import broodtide.catalog.ControlTemplate;
import broodtide.control.Control;
import broodtide.control.MiticideCourse;
import broodtide.lesson.Library;
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
    return Library.names(Library.Shelf.CONTROLS).stream()
        .map(Library::control)
        .filter(template -> isOf(control, template))
        .findFirst()
        .map(ControlTemplate::cautions)
        .orElse(control instanceof MiticideCourse ? OWN_MITICIDE : List.of());
  }

  /** A miticide keeps its short name whatever the course is called. */
  private static boolean isOf(Control control, ControlTemplate template) {
    return control instanceof MiticideCourse course
        ? course.substance().name().equals(template.name())
        : control.name().equals(template.title());
  }
}
