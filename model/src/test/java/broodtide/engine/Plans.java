package broodtide.engine;

import broodtide.control.DroneCombRemoval;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.control.QueenCaging;
import broodtide.control.Requeening;
import broodtide.control.Split;
import broodtide.mite.StockTraits;
import java.time.LocalDate;
import java.util.List;

/** Plans for tests. */
final class Plans {
  private Plans() {}

  static Miticide onBeesOnly(double hazard, int days) {
    return new Miticide("phoretic", days, hazard, 0, 0, 0, 0, 40, Miticide.SupersRule.OFF);
  }

  /** Every kind of control in one season. */
  static Plan everything(LocalDate start) {
    Miticide vapour =
        new Miticide("vapour", 14, 0.08, 0.05, 0.002, 0.05, 5, 35, Miticide.SupersRule.OFF);
    return new Plan(
        "everything",
        List.of(
            new DroneCombRemoval(
                "drone comb",
                start.plusDays(50),
                List.of(start.plusDays(78), start.plusDays(106)),
                0.9,
                0.12),
            new Split("split", start.plusDays(60), 0.4, 0.3, 12),
            new QueenCaging("cage", start.plusDays(120), start.plusDays(143)),
            new MiticideCourse("acid", onBeesOnly(1, 3), start.plusDays(145), 2, 7),
            MiticideCourse.once("vapour", vapour, start.plusDays(150)),
            new Requeening("new queen", start.plusDays(180), new StockTraits(0.4, 0.9), 5)));
  }
}
