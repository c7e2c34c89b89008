package broodtide.forms;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/**
 * A JSON text of somebody's own, in which a program changes some values. What does not change stays
 * as it was written: its order, its layout and its comments.
 *
 * @param text the text with the changes
 * @param lost comments that stood in what was taken out or written anew
 */
public record RevisedJson(String text, List<String> lost) {
  private static final JsonFactory JSON =
      JsonFactory.builder().enable(JsonReadFeature.ALLOW_JAVA_COMMENTS).build();

  /** A value, from its first letter to behind its last; members where it is an object or list. */
  private record Span(int from, int to, boolean object, boolean list, List<Member> members) {
    Span {
      members = List.copyOf(members);
    }

    int find(String name) {
      for (int i = 0; i < members.size(); i++) {
        if (members.get(i).name().equals(name)) {
          return i;
        }
      }
      return -1;
    }
  }

  /** A member of an object, or an item of a list, which has no name. */
  private record Member(String name, int from, Span value) {}

  private record Edit(int from, int to, String text) {}

  /**
   * Changes a text.
   *
   * @param text a sound JSON text; comments are allowed
   * @param was what the text means, as the program would write it
   * @param next what it is to mean
   * @param deep whether changes go into members of members, or replace members as a whole
   * @return the text with the changes
   */
  public static RevisedJson of(String text, JsonNode was, JsonNode next, boolean deep) {
    List<Edit> edits = new ArrayList<>();
    new Reviser(text, edits, deep).revise(read(text), was, next, 0);
    edits.sort(Comparator.comparingInt(Edit::from).thenComparingInt(Edit::to));
    StringBuilder out = new StringBuilder();
    int at = 0;
    for (Edit edit : edits) {
      out.append(text, at, edit.from()).append(edit.text());
      at = edit.to();
    }
    out.append(text.substring(at));
    List<String> lost = new ArrayList<>();
    for (int[] comment : comments(text)) {
      if (edits.stream().anyMatch(e -> e.from() <= comment[0] && comment[1] <= e.to())) {
        lost.add(text.substring(comment[0], comment[1]).strip());
      }
    }
    return new RevisedJson(out.toString(), List.copyOf(lost));
  }

  /**
   * {@return all comments of a text, with their marks}
   *
   * @param text a sound JSON text
   */
  public static List<String> commentsOf(String text) {
    return comments(text).stream().map(c -> text.substring(c[0], c[1]).strip()).toList();
  }

  private static Span read(String text) {
    try (JsonParser parser = JSON.createParser(text)) {
      parser.nextToken();
      return value(parser);
    } catch (IOException e) {
      throw new IllegalStateException("a sound text can be read", e);
    }
  }

  private static Span value(JsonParser parser) throws IOException {
    int from = start(parser);
    boolean object = parser.currentToken() == JsonToken.START_OBJECT;
    boolean list = parser.currentToken() == JsonToken.START_ARRAY;
    List<Member> members = new ArrayList<>();
    if (object) {
      while (parser.nextToken() != JsonToken.END_OBJECT) {
        String name = parser.currentName();
        int key = start(parser);
        parser.nextToken();
        members.add(new Member(name, key, value(parser)));
      }
    } else if (list) {
      while (parser.nextToken() != JsonToken.END_ARRAY) {
        Span item = value(parser);
        members.add(new Member("", item.from(), item));
      }
    } else {
      // Only then has the parser read on to the end of a text.
      int length = parser.getTextLength();
      boolean number = parser.currentToken().isNumeric();
      int to = number ? from + length : (int) parser.currentLocation().getCharOffset();
      return new Span(from, to, false, false, members);
    }
    return new Span(from, start(parser) + 1, object, list, members);
  }

  private static int start(JsonParser parser) {
    return (int) parser.currentTokenLocation().getCharOffset();
  }

  private static List<int[]> comments(String text) {
    List<int[]> found = new ArrayList<>();
    int at = 0;
    while (at < text.length()) {
      char c = text.charAt(at);
      int end = at + 1;
      if (c == '"') {
        while (text.charAt(end) != '"') {
          end += text.charAt(end) == '\\' ? 2 : 1;
        }
        end++;
      } else if (text.startsWith("//", at)) {
        while (end < text.length() && "\r\n".indexOf(text.charAt(end)) < 0) {
          end++;
        }
        found.add(new int[] {at, end});
      } else if (text.startsWith("/*", at)) {
        end = text.indexOf("*/", at + 2) + 2;
        found.add(new int[] {at, end});
      }
      at = end;
    }
    return found;
  }

  private record Reviser(String text, List<Edit> edits, boolean deep) {
    void revise(Span span, JsonNode was, JsonNode next, int depth) {
      boolean into = deep || depth == 0;
      if (was.equals(next)) {
        return;
      }
      if (into && span.object() && was.isObject() && next.isObject()) {
        object(span, was, next, depth);
      } else if (into
          && span.list()
          && was.isArray()
          && next.isArray()
          && span.members().size() == was.size()) {
        list(span, was, next, depth);
      } else {
        edits.add(new Edit(span.from(), span.to(), written(next, span.from())));
      }
    }

    private void object(Span span, JsonNode was, JsonNode next, int depth) {
      boolean[] gone = new boolean[span.members().size()];
      List<String> more = new ArrayList<>();
      for (Map.Entry<String, JsonNode> each : next.properties()) {
        String name = each.getKey();
        int at = span.find(name);
        if (at >= 0) {
          revise(
              span.members().get(at).value(),
              was.has(name) ? was.get(name) : span(span.members().get(at).value()),
              each.getValue(),
              depth + 1);
        } else if (!each.getValue().equals(was.get(name))) {
          more.add('"' + name + "\": " + written(each.getValue(), inner(span)));
        }
      }
      for (Map.Entry<String, JsonNode> each : was.properties()) {
        int at = span.find(each.getKey());
        if (at >= 0 && !next.has(each.getKey())) {
          gone[at] = true;
        }
      }
      members(span, gone, more);
    }

    /** What the user wrote where the program would write nothing: never what is asked for. */
    private JsonNode span(Span value) {
      return TextNode.valueOf(text.substring(value.from(), value.to()) + " as written");
    }

    private void list(Span span, JsonNode was, JsonNode next, int depth) {
      int first = 0;
      while (first < Math.min(was.size(), next.size()) && was.get(first).equals(next.get(first))) {
        first++;
      }
      int last = 0;
      while (last < Math.min(was.size(), next.size()) - first
          && was.get(was.size() - 1 - last).equals(next.get(next.size() - 1 - last))) {
        last++;
      }
      int old = was.size() - last - first;
      int now = next.size() - last - first;
      boolean[] gone = new boolean[was.size()];
      List<String> more = new ArrayList<>();
      for (int i = 0; i < Math.max(old, now); i++) {
        if (i < Math.min(old, now)) {
          revise(
              span.members().get(first + i).value(),
              was.get(first + i),
              next.get(first + i),
              depth + 1);
        } else if (i < old) {
          gone[first + i] = true;
        } else {
          more.add(written(next.get(first + i), inner(span)));
        }
      }
      if (!more.isEmpty() && last > 0) {
        // New items that stand before old ones go in front of the first of these.
        Member behind = span.members().get(was.size() - last);
        edits.add(new Edit(behind.from(), behind.from(), String.join(", ", more) + ", "));
        more = List.of();
      }
      members(span, gone, more);
    }

    /** Takes members out and adds others at the end, with the commas that are then needed. */
    private void members(Span span, boolean[] gone, List<String> more) {
      List<Member> all = span.members();
      int lastKept = all.size() - 1;
      while (lastKept >= 0 && gone[lastKept]) {
        lastKept--;
      }
      for (int i = 0; i < all.size(); i++) {
        int end = all.get(i).value().to();
        int comma = i < all.size() - 1 ? comma(end) : -1;
        boolean stays = i < lastKept || (i == lastKept && !more.isEmpty());
        if (gone[i]) {
          takeOut(all.get(i).from(), end, comma);
        } else if (comma >= 0 && !stays) {
          edits.add(new Edit(comma, comma + 1, ""));
        }
      }
      if (!more.isEmpty()) {
        boolean spread = text.substring(span.from(), span.to()).indexOf('\n') >= 0;
        String before = spread ? "\n" + indent(inner(span)) : " ";
        String added = before + String.join("," + before, more);
        if (lastKept < 0) {
          edits.add(new Edit(span.from() + 1, span.from() + 1, added));
        } else {
          int end = all.get(lastKept).value().to();
          boolean has = lastKept < all.size() - 1;
          int place = has ? comma(end) + 1 : end;
          edits.add(new Edit(place, place, (has ? "" : ",") + added));
        }
      }
    }

    /** Takes a member out, with its comma, and with its line where nothing else stands there. */
    private void takeOut(int from, int to, int comma) {
      int begin = from;
      while (begin > 0 && " \t".indexOf(text.charAt(begin - 1)) >= 0) {
        begin--;
      }
      boolean close = comma < 0 || text.substring(to, comma).isBlank();
      int end = close && comma >= 0 ? comma + 1 : to;
      int after = end;
      while (after < text.length() && " \t\r".indexOf(text.charAt(after)) >= 0) {
        after++;
      }
      boolean alone =
          begin > 0
              && text.charAt(begin - 1) == '\n'
              && after < text.length()
              && text.charAt(after) == '\n';
      edits.add(alone ? new Edit(begin, after + 1, "") : new Edit(from, end, ""));
      if (!close) {
        edits.add(new Edit(comma, comma + 1, ""));
      }
    }

    /** The comma behind a value, over blanks and comments. */
    private int comma(int from) {
      int at = from;
      while (text.charAt(at) != ',') {
        if (text.startsWith("//", at)) {
          at = text.indexOf('\n', at);
        } else if (text.startsWith("/*", at)) {
          at = text.indexOf("*/", at + 2) + 1;
        }
        at++;
      }
      return at;
    }

    /** Where the first member begins, whose indentation others take. */
    private int inner(Span span) {
      return span.members().isEmpty() ? span.from() : span.members().get(0).from();
    }

    private String written(JsonNode value, int at) {
      return NeatJson.text(value).strip().replace("\n", "\n" + indent(at));
    }

    /** The blanks at the beginning of the line on which a letter stands. */
    private String indent(int at) {
      int line = text.lastIndexOf('\n', Math.max(0, at - 1)) + 1;
      int end = line;
      while (end < text.length() && " \t".indexOf(text.charAt(end)) >= 0) {
        end++;
      }
      return text.substring(line, end);
    }
  }
}
