package broodtide.report;

import broodtide.chart.Picture;
import broodtide.chart.Size;
import broodtide.terminal.Table;
import java.util.ArrayList;
import java.util.List;

/**
 * What an answer says of one colony, or of all, in the order in which it is said: sentences, tables
 * and pictures. It is filled by one thread and read when it is whole.
 */
public final class AnswerSheet {
  private final String colony;
  private final List<Part> parts = new ArrayList<>();

  private interface Part {
    void write(HtmlWriter h);
  }

  private record Said(String words, String kind) implements Part {
    @Override
    public void write(HtmlWriter h) {
      if (kind.isEmpty()) {
        h.element("p", words);
      } else {
        h.element("p", words, "class", kind);
      }
    }
  }

  /** A table on the page. */
  record Shown(Table table, String caption) implements Part {
    @Override
    public void write(HtmlWriter h) {
      h.open("table", "class", "cards figures", "role", "table");
      h.element("caption", caption);
      h.open("thead", "role", "rowgroup").open("tr", "role", "row");
      for (Table.Column c : table.columns()) {
        h.element("th", c.head(), "scope", "col", "role", "columnheader");
      }
      h.close().close().open("tbody", "role", "rowgroup");
      for (Table.Row row : table.rows()) {
        h.open("tr", "role", "row");
        for (int i = 0; i < row.cells().size(); i++) {
          if (i == 0) {
            h.open("th", "scope", "row", "role", "rowheader").given(row.cells().get(i)).close();
          } else {
            h.open("td", "role", "cell", "data-head", table.columns().get(i).head());
            h.given(row.cells().get(i)).close();
          }
        }
        h.close();
      }
      h.close().close();
    }
  }

  private record Drawn(Picture picture, String caption) implements Part {
    @Override
    public void write(HtmlWriter h) {
      h.figure(picture, Size.PHONE, caption);
    }
  }

  private AnswerSheet(String colony) {
    this.colony = colony;
  }

  /**
   * {@return an empty sheet}
   *
   * @param colony the colony that it is about; empty when it is about no single one
   */
  public static AnswerSheet about(String colony) {
    return new AnswerSheet(colony);
  }

  /**
   * Says sentences; those said first are the answer.
   *
   * @param sentences one or more
   */
  public void say(String sentences) {
    parts.add(new Said(sentences.strip(), ""));
  }

  /**
   * Says something in passing.
   *
   * @param sentences one or more
   */
  public void mention(String sentences) {
    parts.add(new Said(sentences.strip(), "fine"));
  }

  /**
   * Shows a table.
   *
   * @param table its first column names the rows
   * @param caption what it is about
   */
  public void show(Table table, String caption) {
    parts.add(new Shown(table, caption));
  }

  /**
   * Shows a picture.
   *
   * @param picture what is shown
   * @param caption how to read it
   */
  public void draw(Picture picture, String caption) {
    parts.add(new Drawn(picture, caption));
  }

  String colony() {
    return colony;
  }

  /** The answer: what was said first. */
  String lead() {
    return parts.stream()
        .filter(p -> p instanceof Said)
        .map(p -> ((Said) p).words())
        .findFirst()
        .orElse("");
  }

  /** All but the answer, pictures first, for people would rather look than read. */
  void write(HtmlWriter h) {
    parts.stream().filter(p -> p instanceof Drawn).forEach(p -> p.write(h));
    boolean led = false;
    for (Part part : parts) {
      if (part instanceof Said && !led) {
        led = true;
      } else if (!(part instanceof Drawn)) {
        part.write(h);
      }
    }
  }
}
