package broodtide.forms;

import broodtide.forms.Node.Spot;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Reads a JSON text into {@link Node}s that know their line. Strict, but for comments, which are
 * allowed. Repeated names are faults; so is anything after the value.
 */
final class JsonTree {
  /** Deepest nesting; a study needs eight. */
  static final int DEEPEST = 32;

  private static final JsonFactory JSON =
      JsonFactory.builder()
          .enable(JsonReadFeature.ALLOW_JAVA_COMMENTS)
          .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
          .build();

  private final JsonParser parser;
  private final Faults faults;

  /** Containers not yet closed, innermost first. */
  private final Deque<Spot> open = new ArrayDeque<>();

  private JsonTree(JsonParser parser, Faults faults) {
    this.parser = parser;
    this.faults = faults;
  }

  /** Thrown to leave the recursion once a fault has been noted that ends the reading. */
  private static final class Ended extends Exception {
    private static final long serialVersionUID = 1L;
  }

  /**
   * Reads one text.
   *
   * @return the value, or null when the text is not JSON, which is then among the faults
   */
  public static @Nullable Node read(String text, Faults faults) {
    try (JsonParser parser = JSON.createParser(text)) {
      return new JsonTree(parser, faults).document(text);
    } catch (IOException e) {
      throw new IllegalStateException("a text in memory cannot fail to be read", e);
    }
  }

  private @Nullable Node document(String text) throws IOException {
    try {
      JsonToken first = parser.nextToken();
      if (first == null) {
        faults.add(0, 0, "", null, "is empty; a file of this kind holds one object { ... }");
        return null;
      }
      Node root = value(first, "$");
      if (parser.nextToken() != null) {
        fault(here("$"), parser.getText(), "nothing may follow the last }; remove what does");
      }
      return root;
    } catch (JsonProcessingException e) {
      JsonLocation at = e.getLocation();
      int line = at == null ? 0 : Math.max(0, at.getLineNr());
      int column = at == null ? 0 : Math.max(0, at.getColumnNr());
      String path = open.isEmpty() ? "" : open.getFirst().path();
      faults.add(line, column, path, null, SyntaxWords.of(e, text, open.peekFirst()));
      return null;
    } catch (Ended e) {
      return null;
    }
  }

  private Node value(JsonToken token, String path) throws IOException, Ended {
    Spot spot = here(path);
    return switch (token) {
      case START_OBJECT -> object(spot);
      case START_ARRAY -> list(spot);
      case VALUE_STRING -> new Node.Text(spot, parser.getText());
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT ->
          new Node.Num(spot, Double.parseDouble(parser.getText()), parser.getText());
      case VALUE_TRUE, VALUE_FALSE, VALUE_NULL -> new Node.Word(spot, token.asString());
      default -> throw new IllegalStateException("unexpected token " + token);
    };
  }

  private Node object(Spot spot) throws IOException, Ended {
    enter(spot);
    Map<String, Node> members = new LinkedHashMap<>();
    Map<String, Spot> keys = new LinkedHashMap<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      String name = parser.currentName();
      Spot key = here(member(spot.path(), name));
      Node value = value(parser.nextToken(), key.path());
      Spot earlier = keys.putIfAbsent(name, key);
      if (earlier == null) {
        members.put(name, value);
      } else {
        fault(
            key,
            null,
            "the field stands twice, first on line " + earlier.line() + "; remove one of them");
      }
    }
    open.removeFirst();
    return new Node.Obj(spot, members, keys);
  }

  private Node list(Spot spot) throws IOException, Ended {
    enter(spot);
    List<Node> items = new ArrayList<>();
    JsonToken token = parser.nextToken();
    while (token != JsonToken.END_ARRAY) {
      items.add(value(token, spot.path() + "[" + items.size() + "]"));
      token = parser.nextToken();
    }
    open.removeFirst();
    return new Node.Arr(spot, items);
  }

  private void enter(Spot spot) throws Ended {
    open.addFirst(spot);
    if (open.size() > DEEPEST) {
      fault(
          spot,
          null,
          "brackets are nested more than "
              + DEEPEST
              + " deep; no file of this kind need be, look for a bracket too many");
      throw new Ended();
    }
  }

  private void fault(Spot spot, @Nullable String value, String message) {
    faults.add(spot.line(), spot.column(), spot.path(), value, message);
  }

  private Spot here(String path) {
    JsonLocation at = parser.currentTokenLocation();
    return new Spot(path, at.getLineNr(), at.getColumnNr());
  }

  /** The path of a member of an object. */
  static String member(String path, String name) {
    return name.matches("[A-Za-z_$][A-Za-z0-9_$]*")
        ? path + "." + name
        : path + "['" + name.replace("'", "\\'") + "']";
  }
}
