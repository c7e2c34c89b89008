package broodtide.classroom;

import broodtide.engine.Quantity;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;

/** Seasons as the page's script reads them. */
final class SeasonJson {
  private static final MathContext TWO = new MathContext(2, RoundingMode.HALF_EVEN);
  private static final MathContext FOUR = new MathContext(4, RoundingMode.HALF_EVEN);

  private SeasonJson() {}

  /** What the explorer draws. */
  static ObjectNode explorer(Explorer.Colony colony, Season season) {
    ObjectNode out = object();
    out.put("start", season.start().toString());
    out.put("end", season.end().toString());
    out.put("beyond", season.lost().isPresent() ? "lost" : "not shown");
    Sentences sentences = new Sentences(colony, season);
    out.put("wash", sentences.wash());
    out.put("outcome", sentences.end());
    ArrayNode notes = out.putArray("notes");
    sentences.notes().forEach(notes::add);
    ObjectNode series = out.putObject("series");
    series.set("bees", values(season.of(Quantity.ADULTS)));
    series.set("brood", values(cappedBrood(season)));
    series.set("onBees", values(season.of(Quantity.MITES_ON_BEES)));
    series.set("inBrood", values(season.of(Quantity.MITES_IN_CELLS)));
    series.set("infestation", values(season.of(Quantity.INFESTATION)));
    ArrayNode threshold = out.putArray("threshold");
    colony
        .place()
        .thresholds()
        .forEach(
            s ->
                threshold
                    .addObject()
                    .put("from", s.from().toString())
                    .put("to", s.to().toString())
                    .put("value", s.perHundred()));
    ArrayNode spans = out.putArray("spans");
    stretches(spans, "honey supers on", colony.place().supers());
    stretches(spans, "winter bees raised", colony.place().winterBees());
    out.set("marks", marks(ControlMark.of(colony.scenario().plan().controls())));
    return out;
  }

  /** Things done. */
  static ArrayNode marks(List<ControlMark> marks) {
    ArrayNode out = JsonNodeFactory.instance.arrayNode();
    marks.forEach(m -> out.addObject().put("label", m.label()).put("on", m.on().toString()));
    return out;
  }

  /** Numbers with about four digits, which is more than is known. */
  static ArrayNode values(double[] values) {
    ArrayNode out = JsonNodeFactory.instance.arrayNode();
    for (double v : values) {
      // Thousands of these go out with every turn of a dial; BigDecimal would take half the time.
      long parts = v >= 1000 ? 1 : v >= 100 ? 10 : v >= 10 ? 100 : v >= 1 ? 1000 : 10_000;
      long rounded = Math.round(v * parts);
      if (rounded % parts == 0) {
        out.add(rounded / parts);
      } else {
        out.add((double) rounded / parts);
      }
    }
    return out;
  }

  /** One number with four digits, none of them behind the point when it is large. */
  static BigDecimal number(double value) {
    BigDecimal four = new BigDecimal(value).round(FOUR);
    BigDecimal plain = four.scale() > 4 ? four.setScale(4, RoundingMode.HALF_EVEN) : four;
    BigDecimal bare = plain.stripTrailingZeros();
    return bare.scale() < 0 ? bare.setScale(0) : bare;
  }

  /** A number with two digits, or whole, as an input field takes it. */
  static String brief(double value) {
    BigDecimal two = new BigDecimal(value).round(TWO);
    return (two.scale() < 0 ? two.setScale(0) : two).toPlainString();
  }

  private static double[] cappedBrood(Season season) {
    double[] worker = season.of(Quantity.WORKER_CELLS);
    double[] drone = season.of(Quantity.DRONE_CELLS);
    for (int i = 0; i < worker.length; i++) {
      worker[i] += drone[i];
    }
    return worker;
  }

  private static void stretches(ArrayNode out, String label, List<ClimateYear.Stretch> stretches) {
    for (ClimateYear.Stretch s : stretches) {
      out.addObject()
          .put("label", label)
          .put("from", s.from().toString())
          .put("to", s.to().toString());
    }
  }

  static ObjectNode object() {
    return JsonNodeFactory.instance.objectNode();
  }
}
