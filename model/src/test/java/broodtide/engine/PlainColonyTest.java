package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.control.Plan;
import broodtide.mite.Immigration;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The daily engine against the model's page, worked out colony by colony in other code. */
class PlainColonyTest {
  private static final double SHARE = 1e-9;

  /** How near two searches for the same start come to each other. */
  private static final double SOUGHT = 1e-7;

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
   * Section 6: three years of an average colony, the last sixty days with mites; size and
   * infestation set what a run starts from.
   */
  @ParameterizedTest
  @CsvSource({"0.6,5,1", "1.3,0.4,1", "1,30,1", "0.8,0.1,3", "1,3,0"})
  void aColonyStartsFromTheStandardYear(double size, double infestation, double arriving) {
    LocalDate day = LocalDate.of(2026, 7, 20);
    ColonyModel model = ColonyModel.in(Places.seasonal()).with(visited());
    SimulatedColony member =
        new SimulatedColony(0.9, size, infestation, 1.2, arriving, 0.7, List.of());
    SimulatedColony usual =
        new SimulatedColony(1, 1, infestation, 1.2, arriving / size, 0.7, List.of());
    PlainColony standard = PlainStart.founding(model);
    LocalDate from = day.minusYears(3);
    LocalDate leave = day.minusDays(60);
    ColonyModel alone = model.with(Immigration.NONE);
    PlainStart.play(standard, alone, SimulatedColony.average(0), from, leave);
    StandardColony start = StandardColony.on(model, day);
    PlainColony without = PlainStart.copy(standard, model, 0.8);
    PlainStart.play(without, alone, SimulatedColony.average(0), leave, day);
    near("adults", start.adults(), without.adults());
    near("cells", start.workerCells(), PlainColony.total(without.worker.capped));
    near("spread", start.mitesPerMiteOnBees(), without.mites() / without.onBees);

    PlainColony lead = PlainStart.sought(standard, model, usual, leave, day);
    lead.scale(size);
    PlainStart.clearLedger(lead);
    double atStart = lead.mites();
    Scenario season = new Scenario(model, Plan.waiting("wait"), day, 40);
    PlainCalendar run = new PlainCalendar(season, member);
    DailyEngine.of(season, start, List.of(member))
        .run(
            (t, view) -> {
              if (t > 0) {
                lead.run(run.on(day.plusDays(t - 1L)));
              } else {
                near("infestation", Quantity.INFESTATION.of(view, 0), infestation);
              }
              apart("mites at the start", view.ledger(0).start(), atStart, SOUGHT);
              apart("adults on day " + t, view.adults(0), lead.adults(), SOUGHT);
              apart("mites on day " + t, view.mites(0), lead.mites(), SOUGHT);
              apart("overt", view.bees(AdultClass.HIVE_OVERT, 0), lead.overt.hive, SOUGHT);
              apart("carriers", view.bees(AdultClass.HIVE_CARRIER, 0), lead.carrier.hive, SOUGHT);
            });
  }

  private static Immigration visited() {
    return new Immigration(
        List.of(new Immigration.Window(new YearSpan(MonthDay.of(1, 1), MonthDay.of(12, 31)), 5)));
  }

  private static void compare(String where, ColonyView v, int l, PlainColony p) {
    double k = p.rates.clumping();
    near(where + ": hive bees", v.bees(AdultClass.HIVE_SOUND, l), p.sound.hive);
    near(where + ": hive bees, overt", v.bees(AdultClass.HIVE_OVERT, l), p.overt.hive);
    near(where + ": hive bees, carriers", v.bees(AdultClass.HIVE_CARRIER, l), p.carrier.hive);
    near(where + ": foragers", v.bees(AdultClass.FORAGER_SOUND, l), p.sound.foragers);
    near(where + ": foragers, overt", v.bees(AdultClass.FORAGER_OVERT, l), p.overt.foragers);
    near(where + ": foragers, carriers", v.bees(AdultClass.FORAGER_CARRIER, l), p.carrier.foragers);
    near(where + ": winter bees", v.bees(AdultClass.WINTER, l), p.sound.winter);
    near(where + ": adults", v.adults(l), p.adults());
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
    apart(what, actual, expected, SHARE);
  }

  private static void apart(String what, double actual, double expected, double share) {
    double apart = Math.abs(actual - expected);
    if (!(apart <= share * Math.abs(expected) + TRACE)) {
      assertThat(actual).as(what).isCloseTo(expected, within(share * Math.abs(expected) + TRACE));
    }
  }
}
