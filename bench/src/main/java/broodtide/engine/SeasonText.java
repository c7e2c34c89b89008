package broodtide.engine;

import broodtide.season.Curve;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * A season written out for programs in other languages: rates, curves, daily values, start state,
 * members and what the daily engine makes of each, so that no peer holds a constant of its own. It
 * lives in the engine's package because it reads what the engine shows nobody else.
 */
public final class SeasonText {
  private static final int COMMON_YEAR = 2001;

  private final StringBuilder out = new StringBuilder();

  private SeasonText() {}

  /**
   * Writes a season without controls or immigration.
   *
   * @param scenario the season
   * @param one the colony whose start state is written
   * @param members the colonies, started from it by their own size and infestation
   */
  public static String of(Scenario scenario, SimulatedColony one, List<SimulatedColony> members) {
    SeasonText text = new SeasonText();
    text.rates(scenario);
    text.curves(scenario);
    text.daily(Schedule.of(scenario));
    StandardColony start = StandardColony.on(scenario.model(), scenario.start());
    text.start(start.colonies(List.of(one)));
    ColonyBlock colonies = start.colonies(members);
    text.members(members);
    text.states(colonies, members.size());
    text.expected(scenario, start, members);
    return text.out.toString();
  }

  private void rates(Scenario s) {
    TreeMap<String, Double> all = new TreeMap<>();
    for (Record rates : List.of(s.model().bees(), s.model().mites())) {
      for (var part : rates.getClass().getRecordComponents()) {
        try {
          all.put(part.getName(), (Double) part.getAccessor().invoke(rates));
        } catch (ReflectiveOperationException e) {
          throw new IllegalStateException("cannot read " + part.getName(), e);
        }
      }
    }
    all.put("winterDeath", s.model().climate().winterDeath());
    all.put("infectivity", SimulatedColony.USUAL_INFECTIVITY);
    all.put("yearShare", Curve.phase(s.start()));
    all.put("yearLength", (double) s.start().lengthOfYear());
    all.forEach((name, value) -> line("rate " + name, value));
  }

  private void curves(Scenario s) {
    curve("laying", s.model().climate().laying());
    curve("droneShare", s.model().climate().droneShare());
    curve("winterShare", s.model().climate().winterShare());
    curve("springRelease", s.model().climate().springRelease());
  }

  private void curve(String name, Curve curve) {
    line("curve " + name, curve.knots().size());
    for (Curve.Knot knot : curve.knots()) {
      LocalDate day = knot.day().atYear(COMMON_YEAR);
      line("", Curve.phase(day), knot.value());
    }
  }

  private void daily(Schedule s) {
    line("daily", s.days);
    for (int t = 0; t < s.days; t++) {
      line("", s.laying[t], s.droneShare[t], s.winterShare[t], s.springRelease[t]);
    }
  }

  private void start(ColonyBlock b) {
    double[] adults = adults(b, 0);
    line("ring adults " + adults.length, adults);
    rings(b).forEach((name, ring) -> line("ring " + name + " " + ring.length, lane(ring, 0)));
  }

  /** Adults by class, then mites on bees. */
  private static double[] adults(ColonyBlock b, int lane) {
    double[] adults = new double[b.adults.length + 1];
    for (int k = 0; k < b.adults.length; k++) {
      adults[k] = b.adults[k][lane];
    }
    adults[b.adults.length] = b.phoretic[lane];
    return adults;
  }

  private static Map<String, double[][]> rings(ColonyBlock b) {
    Map<String, double[][]> rings = new LinkedHashMap<>();
    rings.put("openWorker", b.openWorker);
    rings.put("openDrone", b.openDrone);
    rings.put("cappedWorker", b.cappedWorker);
    rings.put("cappedDrone", b.cappedDrone);
    rings.put("workerMothers", b.workerMothers);
    rings.put("droneMothers", b.droneMothers);
    return rings;
  }

  private static double[] lane(double[][] ring, int lane) {
    return Arrays.stream(ring).mapToDouble(row -> row[lane]).toArray();
  }

  private void members(List<SimulatedColony> members) {
    line("members", members.size());
    for (SimulatedColony m : members) {
      line("", m.strength(), m.vigour(), m.infectivity());
    }
  }

  private void states(ColonyBlock b, int members) {
    line("states", members);
    for (int l = 0; l < members; l++) {
      line("", adults(b, l));
      for (double[][] ring : rings(b).values()) {
        line("", lane(ring, l));
      }
    }
  }

  private void expected(Scenario scenario, StandardColony start, List<SimulatedColony> members) {
    line("expected", members.size());
    DailyEngine.of(scenario, start, members)
        .run(
            (day, view) -> {
              for (int l = 0; day == scenario.days() && l < view.lanes(); l++) {
                line("", view.adults(l), view.mites(l));
              }
            });
  }

  private void line(String head, double... values) {
    out.append(head);
    for (double v : values) {
      out.append(' ').append(v == Math.rint(v) ? String.format(Locale.ROOT, "%.0f", v) : v + "");
    }
    out.append('\n');
  }
}
