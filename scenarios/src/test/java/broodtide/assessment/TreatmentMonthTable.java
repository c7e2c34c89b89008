package broodtide.assessment;

import broodtide.catalog.Assumptions;
import broodtide.catalog.Surroundings;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Quantity;
import broodtide.engine.SpringLow;
import broodtide.pages.Figures;
import broodtide.pages.MarkdownTable;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The month of one treatment against the bees of spring, winter loss and the mites of the next
 * spring, from two infestations on 26 July.
 */
final class TreatmentMonthTable {
  private static final LocalDate JULY = LocalDate.of(2025, 7, 26);
  private static final int MEMBERS = 1000;

  private TreatmentMonthTable() {}

  /** Markdown. */
  static String text() {
    MarkdownTable out =
        new MarkdownTable(
            "climate",
            "26 July:",
            "treatment",
            "bees at the low in spring, share of a colony without mites:",
            "winter loss:",
            "mites then, share of those untreated:");
    for (String climate : List.of("cold-continental", "temperate", "warm-temperate")) {
      for (double start : new double[] {3, 0.5}) {
        rows(out, climate, start);
      }
    }
    return out.toString();
  }

  private static void rows(MarkdownTable out, String climate, double start) {
    ColonyModel place =
        Shipped.model(climate).with(Surroundings.SPARSE.immigration(Assumptions.usual()));
    LocalDate low = SpringLow.after(Shipped.model(climate), LocalDate.of(2025, 11, 1)).day();
    double clean =
        mean(
            new DrawnColonies(Shipped.model(climate), JULY, MEMBERS, Untreated.FEW, 0)
                .under(Plan.waiting("clean"), low),
            Quantity.ADULTS,
            low);
    DrawnColonies colonies = new DrawnColonies(place, JULY, MEMBERS, start, 0);
    double[] all = new double[MEMBERS];
    Arrays.fill(all, 1);
    double untreated = mean(colonies.under(Plan.waiting("none"), low), Quantity.MITES, low);
    plans()
        .forEach(
            (name, plan) -> {
              EnsembleRun run = colonies.under(plan, low);
              out.row(
                  climate,
                  Figures.of(start, 2),
                  name,
                  SideBySide.shares(mean(run, Quantity.ADULTS, low) / clean),
                  SideBySide.shares(1 - colonies.shareAlive(run, all, JULY, low)),
                  Figures.of(mean(run, Quantity.MITES, low) / untreated, 2));
            });
  }

  private static double mean(EnsembleRun run, Quantity quantity, LocalDate day) {
    return Arrays.stream(run.values(quantity, day)).average().orElseThrow();
  }

  private static Map<String, Plan> plans() {
    Map<String, Plan> out = new LinkedHashMap<>();
    for (int month = 8; month <= 11; month++) {
      LocalDate day = LocalDate.of(2025, month, 1);
      out.put(
          "amitraz strips from 1 " + day.getMonth().getDisplayName(TextStyle.FULL, Locale.ROOT),
          new Plan("strips", List.of(Shipped.course("amitraz-strips", day))));
    }
    out.put(
        "oxalic dribble on 15 December",
        new Plan("oxalic", List.of(Shipped.course("oxalic-dribble", LocalDate.of(2025, 12, 15)))));
    out.put("none", Plan.waiting("none"));
    return out;
  }
}
