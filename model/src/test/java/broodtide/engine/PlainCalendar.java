package broodtide.engine;

import broodtide.control.Control;
import broodtide.control.DroneCombRemoval;
import broodtide.control.MiticideCourse;
import broodtide.control.QueenCaging;
import broodtide.control.Requeening;
import broodtide.control.Split;
import broodtide.control.TrappingComb;
import broodtide.control.WarmthResponse;
import broodtide.season.Climate;
import java.time.LocalDate;

/** What a scenario asks of one colony on one date, read from section 5 of SCIENCE.md. */
final class PlainCalendar {
  private final Scenario scenario;
  private final SimulatedColony member;

  PlainCalendar(Scenario scenario, SimulatedColony member) {
    this.scenario = scenario;
    this.member = member;
  }

  PlainColony.Day on(LocalDate date) {
    ColonyModel model = scenario.model();
    Climate climate = model.climate();
    double eggs = member.strength() * climate.laying().at(date);
    double drones = climate.droneShare().at(date);
    double stock = model.stock().vigour() * (1 - model.stock().hygiene());
    double killOnBees = 0;
    double killInCells = 0;
    double beeCost = 0;
    double broodKept = 1;
    double beesStaying = 1;
    double broodStaying = 1;
    double droneBroodKept = 1;
    int course = 0;
    for (Control control : scenario.plan().controls()) {
      if (control instanceof DroneCombRemoval c) {
        drones = Math.max(drones, combShare(c, date));
        droneBroodKept *= c.cuts().contains(date) ? 1 - c.taken() : 1;
      } else if (control instanceof MiticideCourse c) {
        double success = course < member.success().size() ? member.success().get(course) : 1;
        course++;
        if (acts(c, date)) {
          double high = climate.high(date);
          WarmthResponse warmth = c.substance().warmth();
          double gives = share(high, warmth.idle(), warmth.full());
          double costs =
              high > warmth.harmful()
                  ? Math.exp(Math.log(2) * (high - warmth.harmful()) / 3.5)
                  : gives;
          killOnBees += success * gives * c.substance().onBees();
          killInCells += success * gives * c.substance().inCells();
          beeCost += Math.min(1, costs * c.substance().beeCost());
          broodKept *= 1 - Math.min(1, costs * c.substance().broodCost());
        }
      } else if (control instanceof QueenCaging c) {
        eggs = date.isBefore(c.from()) || date.isAfter(c.to()) ? eggs : 0;
      } else if (control instanceof TrappingComb c) {
        eggs = queenless(c.from(), c.cagedDays(), date) ? 0 : eggs;
        LocalDate out = c.from().plusDays((long) c.cagedDays() + c.trappingDays());
        broodStaying *= date.equals(out) ? 1 - c.taken() : 1;
      } else if (control instanceof Split c) {
        beesStaying *= date.equals(c.from()) ? 1 - c.beesLeaving() : 1;
        broodStaying *= date.equals(c.from()) ? 1 - c.broodLeaving() : 1;
        eggs = queenless(c.from(), c.daysWithoutLaying(), date) ? 0 : eggs;
      } else if (control instanceof Requeening c) {
        eggs = queenless(c.from(), c.daysWithoutLaying(), date) ? 0 : eggs;
        LocalDate first = c.from().plusDays(c.daysWithoutLaying() + 21);
        double days = date.toEpochDay() - first.toEpochDay();
        double share = days <= 0 ? 0 : days >= 42 ? 1 : days / 42;
        stock = (1 - share) * stock + share * c.stock().vigour() * (1 - c.stock().hygiene());
      }
    }
    return new PlainColony.Day(
        eggs,
        drones,
        climate.winterShare().at(date),
        model.bees().springRelease() * climate.springRelease().at(date),
        member.immigration() * model.immigration().on(date),
        member.vigour() * stock,
        killOnBees,
        killInCells,
        beeCost,
        broodKept,
        beesStaying,
        broodStaying,
        droneBroodKept);
  }

  /** From insertion to the last cut, which takes the comb away in the morning. */
  private double combShare(DroneCombRemoval c, LocalDate date) {
    LocalDate last = c.cuts().get(c.cuts().size() - 1);
    double peak = scenario.model().climate().droneShare().peak();
    boolean in = !date.isBefore(c.inserted()) && date.isBefore(last);
    return in && peak > 0
        ? c.droneShare() * scenario.model().climate().droneShare().at(date) / peak
        : 0;
  }

  private static boolean acts(MiticideCourse c, LocalDate date) {
    for (int i = 0; i < c.applications(); i++) {
      LocalDate given = c.start().plusDays((long) i * c.every());
      if (!date.isBefore(given) && date.isBefore(given.plusDays(c.substance().days()))) {
        return true;
      }
    }
    return false;
  }

  /** How far a value has come from one end to the other. */
  private static double share(double value, double from, double to) {
    return value <= from ? 0 : value >= to ? 1 : (value - from) / (to - from);
  }

  private static boolean queenless(LocalDate from, int days, LocalDate date) {
    return !date.isBefore(from) && date.isBefore(from.plusDays(days));
  }
}
