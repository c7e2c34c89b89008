package broodtide.report;

import broodtide.assessment.Comparison;
import broodtide.assessment.Sensitivity;
import broodtide.chart.Figure;
import broodtide.chart.Heading;
import broodtide.chart.Range;
import broodtide.chart.SensitivityBars;
import broodtide.results.ColonyResult;
import broodtide.words.Answer;
import broodtide.words.Plain;
import broodtide.words.UnknownWords;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Which unknown of a colony matters for the answer. */
final class SensitivityPicture {
  private SensitivityPicture() {}

  /**
   * {@return the picture; empty when nothing was in doubt}
   *
   * @param result what was worked out for a colony; its first plan is looked at
   */
  public static Optional<Figure> of(ColonyResult result) {
    Comparison comparison = result.comparison();
    Answer answer = new Answer(comparison);
    List<SensitivityBars.Index> indices =
        result.sensitivity().stream()
            .filter(s -> s.unknown().prior().logSd() > 0)
            .map(s -> index(s, comparison))
            .toList();
    if (indices.isEmpty()) {
      return Optional.empty();
    }
    String title =
        indices.stream()
            .filter(SensitivityBars.Index::counts)
            .max(Comparator.comparingDouble(SensitivityBars.Index::share))
            .map(most -> "Matters most: " + most.name().toLowerCase(Locale.ROOT))
            .orElse("No single unknown stands out");
    Heading heading =
        new Heading(
            title,
            "Colony "
                + comparison.colony().colony()
                + ": share of the spread of mites per 100 bees on "
                + Plain.day(answer.day())
                + ", \u201c"
                + answer.first().plan().name()
                + "\u201d. Lines: 90 % ranges. Unknowns that go together share what they explain.");
    return Optional.of(
        SensitivityBars.of(heading, "share of the spread, on a scale of ratios", indices));
  }

  private static SensitivityBars.Index index(Sensitivity s, Comparison comparison) {
    return new SensitivityBars.Index(
        UnknownWords.of(s.unknown().unknown()).name(),
        s.index().share(),
        new Range(s.index().range().low(), s.index().range().high()),
        s.beforehand().share(),
        new Range(s.beforehand().range().low(), s.beforehand().range().high()));
  }
}
