package broodtide.engine;

import broodtide.season.Curve;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
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
  public static String of(Scenario scenario, Member one, List<Member> members) {
    SeasonText text = new SeasonText();
    text.rates(scenario);
    text.curves(scenario);
    text.daily(Schedule.of(scenario));
    StartState start = StartState.on(scenario.model(), scenario.start());
    text.start(start.colonies(List.of(one)));
    text.members(members);
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
    double[] adults = new double[7];
    for (int k = 0; k < 6; k++) {
      adults[k] = b.adultKinds()[k][0];
    }
    adults[6] = b.phoretic[0];
    line("ring adults " + adults.length, adults);
    ring("openWorker", b.openWorker);
    ring("openDrone", b.openDrone);
    ring("cappedWorker", b.cappedWorker);
    ring("cappedDrone", b.cappedDrone);
    ring("workerMothers", b.workerMothers);
    ring("droneMothers", b.droneMothers);
  }

  private void ring(String name, double[][] ring) {
    double[] values = new double[ring.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = ring[i][0];
    }
    line("ring " + name + " " + values.length, values);
  }

  private void members(List<Member> members) {
    line("members", members.size());
    for (Member m : members) {
      line("", m.strength(), m.startSize(), m.infestation(), m.vigour());
    }
  }

  private void expected(Scenario scenario, StartState start, List<Member> members) {
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
