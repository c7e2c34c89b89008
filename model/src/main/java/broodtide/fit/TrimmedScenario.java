package broodtide.fit;

import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import java.util.ArrayList;
import java.util.List;

/**
 * A scenario that stops early, without the controls that would begin later.
 *
 * @param scenario what is left
 * @param courses the miticide courses that are left, by their place among those of the whole plan
 */
record TrimmedScenario(Scenario scenario, List<Integer> courses) {

  /** The same up to a day. */
  static TrimmedScenario to(Scenario scenario, int days) {
    List<Control> begun = new ArrayList<>();
    List<Integer> courses = new ArrayList<>();
    int course = 0;
    for (Control c : scenario.plan().controls()) {
      boolean begins = c.from().isBefore(scenario.start().plusDays(days));
      if (begins) {
        begun.add(c);
      }
      if (c.course().isPresent()) {
        if (begins) {
          courses.add(course);
        }
        course++;
      }
    }
    return new TrimmedScenario(
        new Scenario(
            scenario.model(), new Plan(scenario.plan().name(), begun), scenario.start(), days),
        List.copyOf(courses));
  }

  /** A colony of the whole scenario, with the success of the courses that are left. */
  SimulatedColony fitted(SimulatedColony m) {
    List<Double> success = new ArrayList<>(courses.size());
    for (int c : courses) {
      success.add(m.success().get(c));
    }
    return m.with(success);
  }
}
