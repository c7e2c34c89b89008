package broodtide.catalog;

import broodtide.forms.Form;
import broodtide.forms.Node;
import broodtide.forms.Reading;
import broodtide.forms.SchemaParts;
import broodtide.wash.ThresholdSet;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;

/** Treatment thresholds by the name of a set, the path of a file, or a figure. */
public record ThresholdForm() implements Form<Referred<ThresholdSet>> {
  /** {@return the thresholds that hold when a study names none, with the name of their set} */
  public static Referred<ThresholdSet> usual() {
    return new Referred<>(Catalog.USUAL_THRESHOLD, Catalog.threshold(Catalog.USUAL_THRESHOLD));
  }

  @Override
  public @Nullable Referred<ThresholdSet> read(Node node, Reading in) {
    if (!(node instanceof Node.Text text)) {
      in.fault(
          node,
          "expected in double quotes: the name of a set of treatment thresholds, a path ending in"
              + " .json, or a figure such as \"3\" or \"9/300\"");
      return null;
    }
    ThresholdSet set = in.lookUp(node, () -> Catalog.threshold(text.value(), in.source()));
    return set == null ? null : new Referred<>(text.value(), set);
  }

  @Override
  public JsonNode write(Referred<ThresholdSet> value) {
    return JsonNodeFactory.instance.textNode(value.written());
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    return SchemaParts.object().put("type", "string").put("minLength", 1);
  }
}
