package broodtide.engine;

import broodtide.control.Plan;
import broodtide.flow.FlowEngine;
import broodtide.mite.Immigration;
import broodtide.mite.MiteRates;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Seasons whose figures are kept in {@code frozen-seasons.csv} to watch for change; they prove
 * nothing of the model. Written anew, when a change of results is meant, by
 *
 * <pre>
 * java -cp model/target/classes:model/target/test-classes:commons-math3-3.6.1.jar \
 *   broodtide.engine.FrozenSeasons &gt; model/src/test/resources/broodtide/engine/frozen-seasons.csv
 * </pre>
 */
final class FrozenSeasons {
  private static final LocalDate START = LocalDate.of(2026, 3, 1);
  private static final int EVERY = 75;
  private static final int FLOW_STAGES = 12;
  private static final double FLOW_TOLERANCE = 1e-12;

  /** All but shares that rounding alone makes where there is no brood. */
  private static final Set<Quantity> QUANTITIES =
      EnumSet.complementOf(
          EnumSet.of(Quantity.INFESTED_WORKER_SHARE, Quantity.INFESTED_DRONE_SHARE));

  private FrozenSeasons() {}

  /** Prints every row. */
  public static void main(String[] none) {
    System.out.println(
        "# season,member,day, then quantities and the ledger as Java prints doubles");
    rows().forEach((name, values) -> System.out.println(name + "," + joined(values)));
  }

  /** Every row by name: season, member and day. */
  static Map<String, double[]> rows() {
    Map<String, double[]> rows = new LinkedHashMap<>();
    scenarios().forEach((name, scenario) -> daily(rows, name, scenario));
    flow(rows, scenarios());
    return rows;
  }

  private static Map<String, Scenario> scenarios() {
    ColonyModel usual = ColonyModel.in(Places.seasonal());
    ColonyModel visited =
        usual.with(
            new Immigration(
                List.of(
                    new Immigration.Window(
                        new YearSpan(MonthDay.of(7, 1), MonthDay.of(11, 30)), 3))));
    ColonyModel clumped =
        new ColonyModel(
            usual.climate(),
            usual.bees(),
            MiteRates.with(Map.of("clumping", 3.7)),
            usual.stock(),
            usual.immigration());
    Map<String, Scenario> out = new LinkedHashMap<>();
    out.put("waiting", new Scenario(usual, Plan.waiting("waiting"), START, 800));
    out.put("everything", new Scenario(visited, Plans.everything(START), START, 420));
    out.put("clumped", new Scenario(clumped, Plans.everything(START), START, 420));
    return out;
  }

  private static List<SimulatedColony> members() {
    return List.of(
        SimulatedColony.average(2),
        new SimulatedColony(0.8, 0.7, 45, 1.4, 2.5, List.of(0.6, 1.1)),
        new SimulatedColony(1.3, 1.2, 0.2, 0.6, 0, List.of()));
  }

  private static void daily(Map<String, double[]> rows, String name, Scenario scenario) {
    StandardColony start = StandardColony.on(scenario.model(), scenario.start());
    DailyEngine.of(scenario, start, members())
        .run(
            (day, view) -> {
              for (int l = 0; l < view.lanes() && day % EVERY == 0; l++) {
                rows.put(name + "," + l + "," + day, values(view, l));
              }
            });
  }

  private static void flow(Map<String, double[]> rows, Map<String, Scenario> scenarios) {
    scenarios.forEach(
        (name, s) -> {
          Trajectory t =
              FlowEngine.run(s, members().get(1), FLOW_STAGES, FLOW_TOLERANCE).trajectory();
          for (int day = 0; day <= s.days(); day += EVERY) {
            List<Double> values = new ArrayList<>();
            for (Quantity q : QUANTITIES) {
              values.add(t.at(q, START.plusDays(day)));
            }
            ledger(values, t.ledger(day));
            rows.put("flow " + name + ",1," + day, array(values));
          }
        });
  }

  private static double[] values(ColonyView view, int lane) {
    List<Double> values = new ArrayList<>();
    for (Quantity q : QUANTITIES) {
      values.add(q.of(view, lane));
    }
    values.add(view.infestedWorkerCells(lane));
    values.add(view.infestedDroneCells(lane));
    ledger(values, view.ledger(lane));
    return array(values);
  }

  private static void ledger(List<Double> values, MiteLedger l) {
    values.addAll(
        List.of(
            l.start(),
            l.daughters(),
            l.immigrants(),
            l.diedOnBees(),
            l.diedInCells(),
            l.killed(),
            l.cutOut(),
            l.movedAway()));
  }

  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private static String joined(double[] values) {
    StringBuilder out = new StringBuilder();
    for (double v : values) {
      out.append(out.length() == 0 ? "" : ",").append(v);
    }
    return out.toString();
  }
}
