package broodtide.forms;

import java.util.List;
import java.util.Map;

/** A value of a JSON file together with its place. */
public sealed interface Node {
  /**
   * A place in a file.
   *
   * @param path JSON path, for example {@code $.plans[1].controls[0].start}
   * @param line line from 1
   * @param column character of the line from 1
   */
  record Spot(String path, int line, int column) {}

  /** Where the value begins. */
  Spot spot();

  /** The value as a message shows it. */
  String shown();

  /**
   * An object.
   *
   * @param members values in the order of the file
   * @param keys where each member's name stands
   */
  record Obj(Spot spot, Map<String, Node> members, Map<String, Spot> keys) implements Node {
    @Override
    public String shown() {
      return members.isEmpty() ? "{}" : "{...}";
    }
  }

  /** A list. */
  record Arr(Spot spot, List<Node> items) implements Node {
    @Override
    public String shown() {
      return items.isEmpty() ? "[]" : "[...]";
    }
  }

  /** Text in quotes. */
  record Text(Spot spot, String value) implements Node {
    @Override
    public String shown() {
      return value;
    }
  }

  /**
   * A number.
   *
   * @param value its value; infinite when it is too large for a double
   * @param shown as it stands in the file
   */
  record Num(Spot spot, double value, String shown) implements Node {}

  /**
   * One of the bare words {@code true}, {@code false} and {@code null}.
   *
   * @param shown the word
   */
  record Word(Spot spot, String shown) implements Node {}
}
