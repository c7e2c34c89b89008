package broodtide.catalog;

import broodtide.forms.BadInput;
import broodtide.forms.Source;
import broodtide.season.Climate;
import broodtide.wash.ThresholdSet;
import java.util.Map;

/** The shelves of climates, of controls and of treatment thresholds. */
public final class Catalog {
  /** Climates. */
  public static final Shelf<Climate> CLIMATES = new Shelf<>("climates", ClimateFile::read);

  /** Controls with their usual values. */
  public static final Shelf<ControlTemplate> CONTROLS =
      new Shelf<>("controls", ControlTemplateFile::read);

  /** Sets of treatment thresholds. */
  public static final Shelf<ThresholdSet> THRESHOLDS =
      new Shelf<>(
          "thresholds",
          ThresholdFile::read,
          ThresholdFile.FIGURES,
          Map.of("gds-france", "gds-france-2026"));

  /** Name of the set of treatment thresholds that holds when none is named. */
  public static final String USUAL_THRESHOLD = "kulhanek-2021";

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

  /**
   * {@return treatment thresholds by name, by path, or one figure for every day}
   *
   * @param text a shipped name; the path of a file of that kind; mites per 100 bees, such as {@code
   *     3}; or mites in a number of bees, such as {@code 9/300}
   * @throws BadInput when there is none, or the file is faulty
   */
  public static ThresholdSet threshold(String text) {
    return threshold(text, Source.here());
  }

  /** The same with paths that start beside a file. */
  static ThresholdSet threshold(String text, Source from) {
    return ThresholdFile.figure(text).orElseGet(() -> THRESHOLDS.read(THRESHOLDS.find(text, from)));
  }
}
