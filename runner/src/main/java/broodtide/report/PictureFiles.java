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
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;

/**
 * The pictures of a run as files: each as SVG, and as PNG too where the README names it so or the
 * user asks; on a machine without fonts as SVG alone.
 *
 * <p>PNGs are drawn by a thread beside the caller's, for loading what paints them takes a fifth of
 * a second that a run can use. The files are the same bytes. One thread at a time may call.
 */
public final class PictureFiles {
  /** Pictures that are drawn as PNG unasked. */
  private static final Set<String> ALSO_PNG = Set.of("compare", "forecast", "windows", "apiary");

  private final boolean several;
  private final boolean png;
  private final Map<String, CompletableFuture<byte[]>> files = new LinkedHashMap<>();
  private final Map<String, byte[]> drawn = new LinkedHashMap<>();
  private final ThreadPoolExecutor painter =
      new ThreadPoolExecutor(
          0, 1, 1, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), PictureFiles::thread);
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
    byte[] svg = picture.svg().getBytes(StandardCharsets.UTF_8);
    files.put(name + ".svg", CompletableFuture.completedFuture(svg));
    if (asPng(what)) {
      files.put(name + ".png", CompletableFuture.supplyAsync(picture::png, painter));
    }
  }

  private static Thread thread(Runnable task) {
    Thread thread = new Thread(task, "pictures");
    thread.setDaemon(true);
    return thread;
  }

  /** Waits for what is still being drawn. */
  private void gather() {
    files.forEach(
        (name, file) -> {
          try {
            drawn.put(name, file.join());
          } catch (CompletionException e) {
            if (!(e.getCause() instanceof FontsMissing missing)) {
              throw e;
            }
            lacking = Optional.of(String.valueOf(missing.getMessage()));
          }
        });
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
    gather();
    return drawn;
  }

  /** Why there are no PNG files, and how to mend it. */
  public Optional<String> lacking() {
    gather();
    return lacking;
  }
}
