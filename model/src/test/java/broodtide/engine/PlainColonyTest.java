package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.control.Plan;
import broodtide.mite.Immigration;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The daily engine against the model's page, worked out colony by colony in other code. */
class PlainColonyTest {
  private static final double SHARE = 1e-9;

  /** Below this many bees or mites rounding is all there is. */
  private static final double TRACE = 1e-7;

  @ParameterizedTest
  @CsvSource({"0,2,1", "1,2,1", "2,2,4", "3,2,7", "4,0.7,1", "5,3,3", "6,40,5", "7,2,2"})
  void theDailyEngineDoesWhatThePageSays(int seed, double clumping, int every) {
    DrawnSeason season = new DrawnSeason(seed, clumping);
    DailyEngine.from(season.block, season.scenario, season.members)
        .run(
            (day, view) -> {
              assertThat(view.lanes()).isEqualTo(season.members.size());
              for (int l = 0; l < view.lanes(); l++) {
                PlainColony p = season.plain.get(l);
                if (day > 0) {
                  p.run(
                      new PlainCalendar(season.scenario, season.members.get(l))
                          .on(DrawnSeason.START.plusDays(day - 1L)));
                }
                if (day % every == 0) {
                  compare("seed " + seed + ", colony " + l + ", day " + day, view, l, p);
                }
              }
            });
  }

  /**
   * Section 6: three years of an average colony; size and infestation set what a run starts from.
   */
  @Test
  void aColonyStartsFromTheStandardYear() {
    LocalDate day = LocalDate.of(2026, 5, 20);
    ColonyModel model = ColonyModel.in(Places.seasonal());
    PlainColony standard = PlainStart.standard(model, day);
    double size = 0.6;
    double infestation = 5;
    StartState start = StartState.on(model.with(visited()), day);
    near("adults", start.adults(), standard.adults());
    near("cells", start.workerCells(), PlainColony.total(standard.worker.capped));
    near("spread", start.mitesPerMiteOnBees(), standard.mites() / standard.onBees);

    Member member = new Member(1, size, infestation, 1, 1, List.of());
    Scenario season = new Scenario(model, Plan.waiting("wait"), day, 40);
    PlainStart.scale(standard, size, infestation);
    double atStart = standard.mites();
    PlainCalendar run = new PlainCalendar(season, member);
    DailyEngine.of(season, start, List.of(member))
        .run(
            (t, view) -> {
              if (t > 0) {
                standard.run(run.on(day.plusDays(t - 1L)));
              }
              near("mites at the start", view.ledger(0).start(), atStart);
              compare("day " + t, view, 0, standard);
            });
  }

  private static Immigration visited() {
    return new Immigration(
        List.of(new Immigration.Window(new YearSpan(MonthDay.of(1, 1), MonthDay.of(12, 31)), 5)));
  }

  private static void compare(String where, ColonyView v, int l, PlainColony p) {
    double k = p.rates.clumping();
    near(where + ": hive bees", v.hiveBees(l), p.sound.hive + p.harmed.hive);
    near(where + ": foragers", v.foragers(l), p.sound.foragers + p.harmed.foragers);
    near(where + ": winter bees", v.winterBees(l), p.sound.winter + p.harmed.winter);
    near(where + ": sound winter bees", v.soundWinterBees(l), p.sound.winter);
    near(where + ": harmed bees", v.harmedBees(l), p.harmed.all());
    near(
        where + ": open brood",
        v.openBrood(l),
        PlainColony.total(p.worker.open) + PlainColony.total(p.drone.open));
    near(where + ": worker cells", v.workerCells(l), PlainColony.total(p.worker.capped));
    near(where + ": drone cells", v.droneCells(l), PlainColony.total(p.drone.capped));
    near(where + ": infested worker cells", v.infestedWorkerCells(l), p.worker.infested(k));
    near(where + ": infested drone cells", v.infestedDroneCells(l), p.drone.infested(k));
    near(where + ": mites on bees", v.mitesOnBees(l), p.onBees);
    near(where + ": mites in worker cells", v.mitesInWorkerCells(l), p.worker.inside());
    near(where + ": mites in drone cells", v.mitesInDroneCells(l), p.drone.inside());
    MiteLedger ledger = v.ledger(l);
    near(where + ": daughters", ledger.daughters(), p.daughters);
    near(where + ": immigrants", ledger.immigrants(), p.immigrants);
    near(where + ": died on bees", ledger.diedOnBees(), p.diedOnBees);
    near(where + ": died in cells", ledger.diedInCells(), p.diedInCells);
    near(where + ": killed", ledger.killed(), p.killed);
    near(where + ": cut out", ledger.cutOut(), p.cutOut);
    near(where + ": moved away", ledger.movedAway(), p.movedAway);
    near(where + ": mites now", ledger.end(), p.mites());
  }

  private static void near(String what, double actual, double expected) {
    double apart = Math.abs(actual - expected);
    if (!(apart <= SHARE * Math.abs(expected) + TRACE)) {
      assertThat(actual).as(what).isCloseTo(expected, within(SHARE * Math.abs(expected) + TRACE));
    }
  }
}
