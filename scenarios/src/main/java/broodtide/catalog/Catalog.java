package broodtide.catalog;

import broodtide.forms.BadInput;
import broodtide.season.Climate;

/** The shelves of climates and of controls. */
public final class Catalog {
  /** Climates. */
  public static final Shelf<Climate> CLIMATES = new Shelf<>("climates", ClimateFile::read);

  /** Controls with their usual values. */
  public static final Shelf<ControlTemplate> CONTROLS =
      new Shelf<>("controls", ControlTemplateFile::read);

  private Catalog() {}

  /**
   * {@return a climate by name or path}
   *
   * @param nameOrPath a shipped name, or the path of a file of that kind
   * @throws BadInput when there is none, or the file is faulty
   */
  public static Climate climate(String nameOrPath) {
    return CLIMATES.get(nameOrPath);
  }

  /**
   * {@return a control with its usual values by name or path}
   *
   * @param nameOrPath a shipped name, or the path of a file of that kind
   * @throws BadInput when there is none, or the file is faulty
   */
  public static ControlTemplate control(String nameOrPath) {
    return CONTROLS.get(nameOrPath);
  }
}
