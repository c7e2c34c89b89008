package broodtide.words;

import broodtide.assessment.YearStages;
import broodtide.catalog.Catalog;
import broodtide.wash.ThresholdSet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What to mind about the treatment threshold that a colony is held to. */
public final class ThresholdWords {
  private ThresholdWords() {}

  /**
   * {@return what to mind, in sentences: the caution of the set, and beside the set that is taken
   * when none is named, which shipped sets are stricter on the day}
   *
   * @param stages the year of the place
   * @param thresholds the set
   * @param day the day that is judged
   */
  public static List<String> notes(YearStages stages, ThresholdSet thresholds, LocalDate day) {
    List<String> out = new ArrayList<>();
    thresholds.caution().ifPresent(out::add);
    if (thresholds.name().equals(Catalog.USUAL_THRESHOLD)) {
      stages
          .thresholdOn(thresholds, day)
          .flatMap(t -> stricter(stages, t, day))
          .ifPresent(out::add);
    }
    return out;
  }

  private static Optional<String> stricter(YearStages stages, double than, LocalDate day) {
    List<String> sets = new ArrayList<>();
    for (String name : Catalog.THRESHOLDS.names()) {
      ThresholdSet set = Catalog.threshold(name);
      stages
          .thresholdOn(set, day)
          .filter(t -> t < than && set.caution().isEmpty())
          .ifPresent(t -> sets.add(Plain.threshold(t) + " in \"" + name + "\""));
    }
    return sets.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Stricter thresholds are published for "
                + Plain.shortDay(day)
                + ": "
                + String.join(", ", sets)
                + " (per 100 bees). You can choose one as your threshold.");
  }
}
