package broodtide.report;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.ControlCautions;
import broodtide.chart.SeasonChart;
import broodtide.results.ColonyResult;
import broodtide.words.Answer;
import broodtide.words.FirstLines;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the page says of one colony. It is set as soon as the colony has been worked out and keeps
 * none of its simulated seasons, so that an apiary of many colonies takes no more room than one.
 *
 * @param colony the case
 * @param several whether the page speaks of other colonies too
 * @param id identifier of its section
 * @param first where the colony stands, what waiting leads to, and what helps most: two lines or
 *     more
 * @param further sentences that follow it
 * @param contradiction a warning about the washes, if there is one
 * @param section chart, plans, washes and what was learned
 * @param meanings what the columns of its table of plans mean
 * @param turns what would change the answer
 * @param cautions cautions with each control of the plans, by its name
 * @param treats whether a plan gives a miticide
 * @param winters whether the forecast reaches the next spring
 */
record PagePart(
    ColonyCase colony,
    boolean several,
    String id,
    List<String> first,
    List<String> further,
    Optional<String> contradiction,
    HtmlWriter section,
    HtmlWriter meanings,
    List<String> turns,
    Map<String, List<String>> cautions,
    boolean treats,
    boolean winters) {
  /**
   * Sets the part of one colony.
   *
   * @param result what was worked out
   * @param chart its plans over the season
   * @param number its place among the colonies of the run, from 1
   * @param several whether there are others
   * @return HTML
   */
  public static PagePart of(ColonyResult result, SeasonChart chart, int number, boolean several) {
    Answer answer = new Answer(result.comparison());
    String id = "colony-" + number;
    return new PagePart(
        result.comparison().colony(),
        several,
        id,
        FirstLines.of(result.comparison()),
        answer.further(),
        Answer.contradiction(result.agreement()),
        new ColonySection(result, chart, several).write(id),
        ColonySection.meanings(result.comparison()),
        AnswerDrivers.of(result),
        cautions(result),
        result.comparison().runs().stream().anyMatch(r -> r.treatments() > 0),
        answer.first().springLow().isPresent());
  }

  private static Map<String, List<String>> cautions(ColonyResult result) {
    Map<String, List<String>> out = new LinkedHashMap<>();
    result.comparison().runs().stream()
        .flatMap(run -> run.plan().controls().stream())
        .forEach(c -> out.computeIfAbsent(c.name(), name -> ControlCautions.of(c)));
    return out;
  }
}
