package broodtide.web;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The files that the page is made of. Only those listed here are ever sent. */
public final class Assets {
  private static final String CSS = "text/css; charset=utf-8";
  private static final String SCRIPT = "text/javascript; charset=utf-8";

  private static final Map<String, String> TYPES =
      Map.ofEntries(
          Map.entry("base.css", CSS),
          Map.entry("explorer.css", CSS),
          Map.entry("lesson.css", CSS),
          Map.entry("chart.css", CSS),
          Map.entry("print.css", CSS),
          Map.entry("icon.svg", "image/svg+xml"),
          Map.entry("page.js", SCRIPT),
          Map.entry("dom.js", SCRIPT),
          Map.entry("scale.js", SCRIPT),
          Map.entry("chart.js", SCRIPT),
          Map.entry("explorer.js", SCRIPT),
          Map.entry("readout.js", SCRIPT),
          Map.entry("lessons.js", SCRIPT),
          Map.entry("lesson.js", SCRIPT),
          Map.entry("choose.js", SCRIPT),
          Map.entry("draw.js", SCRIPT),
          Map.entry("washes.js", SCRIPT),
          Map.entry("hives.css", CSS),
          Map.entry("hives.js", SCRIPT),
          Map.entry("asking.js", SCRIPT),
          Map.entry("draft.js", SCRIPT),
          Map.entry("year.js", SCRIPT),
          Map.entry("where.js", SCRIPT),
          Map.entry("questions.js", SCRIPT),
          Map.entry("counts.js", SCRIPT),
          Map.entry("done.js", SCRIPT),
          Map.entry("stand.js", SCRIPT),
          Map.entry("plans.js", SCRIPT),
          Map.entry("takeaway.js", SCRIPT),
          Map.entry("doors.js", SCRIPT));

  /** Where files lie: those of the class page, then those of the page for one's own hives. */
  private static final List<String> FOLDERS = List.of("/classroom/", "/hives/");

  private Assets() {}

  /** A file of that name; empty when it is not listed. */
  public static Optional<Response> find(String name) {
    return Optional.ofNullable(TYPES.get(name))
        .map(type -> new Response(200, type, bytes("static/" + name)));
  }

  /** A text among the program's own files. */
  static String text(String path) {
    return new String(bytes(path), StandardCharsets.UTF_8);
  }

  private static byte[] bytes(String path) {
    for (String folder : FOLDERS) {
      try (InputStream in = Assets.class.getResourceAsStream(folder + path)) {
        if (in != null) {
          return in.readAllBytes();
        }
      } catch (IOException e) {
        throw new IllegalStateException("cannot read " + folder + path, e);
      }
    }
    throw new IllegalStateException("the program lacks its own file " + path);
  }
}
