package broodtide.forms;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Iterator;
import java.util.Map;

/**
 * Lays JSON out for people: an object or list of plain values stands on one line, one of sentences
 * or of further brackets is spread over lines.
 */
public final class NeatJson {
  private static final int SENTENCE = 40;

  private final StringBuilder out = new StringBuilder();

  private NeatJson() {}

  /** The value as text, with a line end at its end. */
  static String text(JsonNode node) {
    NeatJson neat = new NeatJson();
    neat.add(node, "");
    return neat.out.append('\n').toString();
  }

  private void add(JsonNode node, String indent) {
    if (!node.isContainerNode() || node.isEmpty()) {
      out.append(node);
    } else if (spread(node)) {
      String inner = indent + "  ";
      addMembers(node, "\n" + inner, ",\n" + inner, "\n" + indent, inner);
    } else {
      addMembers(node, "", ", ", "", indent);
    }
  }

  private void addMembers(JsonNode node, String first, String next, String last, String indent) {
    out.append(node.isObject() ? '{' : '[').append(first);
    String between = "";
    if (node.isObject()) {
      for (Map.Entry<String, JsonNode> member : node.properties()) {
        out.append(between).append('"').append(member.getKey()).append("\": ");
        add(member.getValue(), indent);
        between = next;
      }
    } else {
      for (Iterator<JsonNode> items = node.elements(); items.hasNext(); ) {
        out.append(between);
        add(items.next(), indent);
        between = next;
      }
    }
    out.append(last).append(node.isObject() ? '}' : ']');
  }

  private static boolean spread(JsonNode node) {
    for (JsonNode each : node) {
      if (each.isContainerNode() || each.asText().length() > SENTENCE) {
        return true;
      }
    }
    return false;
  }
}
