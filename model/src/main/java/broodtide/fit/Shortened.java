package broodtide.fit;

import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.Scenario;
import java.util.List;

/** A scenario that stops early. */
final class Shortened {
  private Shortened() {}

  /** The same up to a day, without the controls that would begin later. */
  static Scenario to(Scenario scenario, int days) {
    List<Control> begun =
        scenario.plan().controls().stream()
            .filter(c -> c.from().isBefore(scenario.start().plusDays(days)))
            .toList();
    return new Scenario(
        scenario.model(), new Plan(scenario.plan().name(), begun), scenario.start(), days);
  }
}
