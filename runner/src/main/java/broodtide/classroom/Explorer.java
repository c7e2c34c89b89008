package broodtide.classroom;

import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.mite.Immigration;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The colonies that come of what the explorer lets one set. */
final class Explorer {
  /** When mites arrive: as counted by Frey & Rosenkranz 2014. */
  private static final YearSpan ARRIVING = new YearSpan(MonthDay.of(7, 1), MonthDay.of(11, 30));

  private final Places places;
  private final SeasonPlayer player;

  Explorer(Places places, SeasonPlayer player) {
    this.places = places;
    this.player = player;
  }

  /**
   * A colony under one scenario.
   *
   * @param letter the scenario, A to D
   * @param actions what is done
   * @param place where it lives
   * @param scenario what the engine plays
   * @param season what came of it
   */
  record Colony(
      String letter,
      List<ExplorerState.Action> actions,
      ClimateYear place,
      Scenario scenario,
      Season season) {}

  /** Plays all scenarios of a state. */
  List<Colony> play(ExplorerState state) {
    ClimateYear place = places.place(state.climate(), state.south());
    Immigration north =
        new Immigration(List.of(new Immigration.Window(ARRIVING, state.arrivals())));
    ColonyModel model =
        ColonyModel.in(place.climate()).with(state.south() ? north.inSouth() : north);
    LocalDate first = ExplorerState.first(state.south());
    int days = Math.toIntExact(ExplorerState.last(state.south()).toEpochDay() - first.toEpochDay());
    SimulatedColony member = new SimulatedColony(state.brood(), 1, state.mites(), 1, 1, List.of());
    List<Colony> out = new ArrayList<>();
    for (int i = 0; i < state.scenarios().size(); i++) {
      String letter = ExplorerState.LETTERS.get(i).toUpperCase(Locale.ROOT);
      List<ExplorerState.Action> actions = state.scenarios().get(i);
      Plan plan = new Plan(letter, actions.stream().map(ExplorerState.Action::placed).toList());
      Scenario scenario = new Scenario(model, plan, first, days);
      out.add(new Colony(letter, actions, place, scenario, player.play(scenario, member)));
    }
    return out;
  }
}
