package broodtide.report;

import broodtide.chart.FontsMissing;
import broodtide.chart.Picture;
import broodtide.files.Outputs;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The pictures of a run as files: each as SVG, and as PNG too where the README names it so or the
 * user asks; on a machine without fonts as SVG alone.
 */
public final class PictureFiles {
  /** Pictures that are drawn as PNG unasked. */
  private static final Set<String> ALSO_PNG = Set.of("compare", "forecast", "windows", "apiary");

  private final boolean several;
  private final boolean png;
  private final Map<String, byte[]> files = new LinkedHashMap<>();
  private Optional<String> lacking = Optional.empty();

  /**
   * @param several whether there is more than one colony, whose names the files then bear
   * @param png whether every picture is wanted as PNG too
   */
  public PictureFiles(boolean several, boolean png) {
    this.several = several;
    this.png = png;
  }

  /**
   * Draws a picture.
   *
   * @param what names the files
   * @param colony the colony that it shows
   */
  public void add(String what, String colony, Picture picture) {
    draw(what, name(what, colony, files.keySet()), picture);
  }

  /**
   * Draws a picture of all colonies.
   *
   * @param what names the files
   */
  public void addOf(String what, Picture picture) {
    draw(what, what, picture);
  }

  /** The names of a picture of all colonies. */
  public static List<String> ofAll(String what) {
    return List.of(what + ".svg", what + ".png");
  }

  private void draw(String what, String name, Picture picture) {
    files.put(name + ".svg", picture.svg().getBytes(StandardCharsets.UTF_8));
    if (lacking.isPresent() || !asPng(what)) {
      return;
    }
    try {
      files.put(name + ".png", picture.png());
    } catch (FontsMissing e) {
      lacking = Optional.of(String.valueOf(e.getMessage()));
    }
  }

  /**
   * The names of a kind of picture of several colonies, in the order in which they are drawn.
   *
   * @param what names the files
   */
  public List<String> names(String what, List<String> colonies) {
    Set<String> names = new LinkedHashSet<>();
    for (String colony : colonies) {
      String name = name(what, colony, names);
      names.add(name + ".svg");
      if (asPng(what)) {
        names.add(name + ".png");
      }
    }
    return List.copyOf(names);
  }

  private boolean asPng(String what) {
    return png || ALSO_PNG.contains(what);
  }

  private String name(String what, String colony, Set<String> taken) {
    String plain = several ? what + "-" + Outputs.name(colony) : what;
    String name = plain;
    for (int n = 2; taken.contains(name + ".svg"); n++) {
      name = plain + "-" + n;
    }
    return name;
  }

  /** The files by name. */
  public Map<String, byte[]> files() {
    return files;
  }

  /** Why there are no PNG files, and how to mend it. */
  public Optional<String> lacking() {
    return lacking;
  }
}
