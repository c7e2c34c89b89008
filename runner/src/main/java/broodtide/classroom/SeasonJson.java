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

  /** What the explorer draws and says of all scenarios. */
  static ObjectNode explorer(List<Explorer.Colony> colonies) {
    ClimateYear place = colonies.get(0).place();
    Season first = colonies.get(0).season();
    ObjectNode out = object();
    out.put("start", first.start().toString());
    out.put("end", first.end().toString());
    ArrayNode spans = out.putArray("spans");
    stretches(spans, "honey supers on", place.supers());
    stretches(spans, "winter bees raised", place.winterBees());
    ArrayNode scenarios = out.putArray("scenarios");
    colonies.forEach(colony -> scenario(scenarios.addObject(), colony));
    return out;
  }

  private static void scenario(ObjectNode out, Explorer.Colony colony) {
    Season season = colony.season();
    Sentences sentences = new Sentences(colony);
    out.put("letter", colony.letter());
    out.put("beyond", season.lost().isPresent() ? "lost" : "not shown");
    out.put("wash", sentences.wash());
    out.put("winter", sentences.winter());
    out.put("outcome", sentences.end());
    ArrayNode actions = out.putArray("actions");
    List<String> words = sentences.actions();
    for (int i = 0; i < words.size(); i++) {
      ExplorerState.Action action = colony.actions().get(i);
      actions
          .addObject()
          .put("control", action.control())
          .put("on", action.on().toString())
          .put("label", ControlMark.shortly(action.placed().name()))
          .put("words", words.get(i));
    }
    ArrayNode notes = out.putArray("notes");
    sentences.notes().forEach(notes::add);
    double[] onBees = season.of(Quantity.MITES_ON_BEES);
    double[] inCells = season.of(Quantity.MITES_IN_CELLS);
    double[] inDrone = season.of(Quantity.MITES_IN_DRONE_CELLS);
    for (int i = 0; i < inCells.length; i++) {
      inCells[i] = Math.max(0, inCells[i] - inDrone[i]);
    }
    ObjectNode series = out.putObject("series");
    series.set("onBees", values(onBees));
    series.set("inWorker", values(inCells));
    series.set("inDrone", values(inDrone));
    series.set("bees", values(season.of(Quantity.ADULTS)));
    series.set("infestation", values(season.of(Quantity.INFESTATION)));
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
