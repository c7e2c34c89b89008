package broodtide.catalog;

import broodtide.forms.Form;
import broodtide.forms.Node;
import broodtide.forms.Reading;
import broodtide.forms.SchemaParts;
import broodtide.study.Study.Referred;
import broodtide.wash.LimitSet;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;

/** Limits by their name in the library or the path of a file. */
public record LimitsForm() implements Form<Referred<LimitSet>> {
  /** The limits that hold when a study names none. */
  static Referred<LimitSet> usual() {
    String name = LimitLibrary.names().get(0);
    return new Referred<>(name, LimitLibrary.shipped(name));
  }

  @Override
  public @Nullable Referred<LimitSet> read(Node node, Reading in) {
    if (!(node instanceof Node.Text text)) {
      in.fault(node, "allowed is the name of limits or a path ending in .json, in double quotes");
      return null;
    }
    LimitSet set = in.lookUp(node, () -> LimitLibrary.find(text.value(), in.source()));
    return set == null ? null : new Referred<>(text.value(), set);
  }

  @Override
  public JsonNode write(Referred<LimitSet> value) {
    return JsonNodeFactory.instance.textNode(value.written());
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    return SchemaParts.object().put("type", "string").put("minLength", 1);
  }
}
