package broodtide.results;

import static broodtide.results.JsonFigures.four;

import broodtide.fit.GrowthFit;
import broodtide.fit.PooledGrowth;
import broodtide.words.GrowthWords;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** How fast mites grow, as JSON. */
final class GrowthJson {
  private GrowthJson() {}

  /** Fills a node. */
  static void write(
      ObjectNode node,
      GrowthFit fit,
      List<LocalDate> treated,
      Optional<LocalDate> ahead,
      int bees) {
    node.put("tells", fit.differsFromZero());
    node.put("sentence", GrowthWords.sentence(fit));
    ArrayNode days = node.putArray("treated");
    treated.forEach(d -> days.add(d.toString()));
    put(node, "perDay", fit.growth().perDay());
    put(node, "perDayLow", finite(fit.growth().perDayInterval().low()));
    put(node, "perDayHigh", finite(fit.growth().perDayInterval().high()));
    put(node, "monthFactor", fit.growth().monthFactor());
    put(node, "doublingDays", fit.growth().doublingDays());
    put(node, "overDispersion", fit.overDispersion());
    ahead.ifPresent(day -> ahead(node.putObject("ahead"), fit, day, bees));
  }

  /** Fills a node with the growth over several hives. */
  static void write(ObjectNode node, PooledGrowth together) {
    node.put("hives", together.hives());
    node.put("perDay", four(together.perDay()));
    node.put("perDayLow", four(together.perDayInterval().low()));
    node.put("perDayHigh", four(together.perDayInterval().high()));
    node.put("between", four(together.between()));
  }

  private static void ahead(ObjectNode node, GrowthFit fit, LocalDate day, int bees) {
    node.put("date", day.toString());
    node.put("bees", bees);
    fit.forecast(day, bees)
        .ifPresentOrElse(
            f -> {
              node.put("median", f.median());
              node.put("q05", f.interval(0.9).low());
              node.put("q95", f.interval(0.9).high());
            },
            () ->
                node.put(
                    "why",
                    fit.whyNoForecast(day)
                        .map(w -> GrowthWords.whyNoForecast(fit, w))
                        .orElse("no forecast")));
  }

  /** JSON has no infinity; an end that is open is left out. */
  private static OptionalDouble finite(double value) {
    return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  private static void put(ObjectNode node, String field, OptionalDouble value) {
    value.ifPresent(v -> node.put(field, four(v)));
  }
}
