package broodtide.decision;

import broodtide.control.Control;
import broodtide.control.Plan;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/**
 * Plans as people write them: {@code on 2026-08-05 with thymol and on 2026-12-20 with
 * oxalic-dribble}.
 */
public final class PlanText {
  private static final String ALLOWED = "\"on DATE with CONTROL and on DATE with CONTROL ...\"";
  private static final DateTimeFormatter SHORT = DateTimeFormatter.ofPattern("d MMM", Locale.ROOT);

  private PlanText() {}

  /**
   * Reads a plan of shipped or own controls, each on its day.
   *
   * @param text words as in {@code on 2026-08-20 with thymol}
   * @return the plan
   * @throws broodtide.measure.OutOfRange when the words are no plan
   * @throws broodtide.forms.BadInput when there is no such control
   */
  public static Plan read(String text) {
    List<Rule.Placed> placed = RuleText.placed("--plan", text, ALLOWED);
    List<Control> controls = placed.stream().map(t -> t.control().at(t.day())).toList();
    return new Plan(shortName(placed), controls);
  }

  /** Names and days without the small words, for tables and labels. */
  private static String shortName(List<Rule.Placed> placed) {
    StringBuilder name = new StringBuilder();
    for (Rule.Placed t : placed) {
      name.append(name.length() == 0 ? "" : ", ").append(t.control().name());
      name.append(' ').append(SHORT.format(t.day()));
    }
    return name.toString();
  }
}
