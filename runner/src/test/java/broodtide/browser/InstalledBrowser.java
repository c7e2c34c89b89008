package broodtide.browser;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/** The Chromium of this machine. The gate, which sets CI=true, fails without one. */
public final class InstalledBrowser {
  private static final String MISSING =
      "no Chromium on the path, so the pages are not looked at in a browser; install the"
          + " distribution's package chromium";

  private InstalledBrowser() {}

  /**
   * {@return the browser's program; without one the calling tests are skipped, and fail in the
   * gate}
   */
  public static Path program() {
    String path = Optional.ofNullable(System.getenv("PATH")).orElse("");
    Optional<Path> found =
        Stream.of("chromium", "chromium-browser", "google-chrome")
            .flatMap(
                name -> Stream.of(path.split(File.pathSeparator)).map(dir -> Path.of(dir, name)))
            .filter(Files::isExecutable)
            .findFirst();
    if (found.isEmpty() && "true".equals(System.getenv("CI"))) {
      Assertions.fail(MISSING);
    }
    Assumptions.assumeTrue(found.isPresent(), MISSING);
    return found.orElseThrow();
  }

  /**
   * {@return the words that start it without a window, with nothing of its own to say to any
   * network}
   *
   * @param profile a folder that nobody else uses
   */
  public static List<String> command(Path profile) {
    return List.of(
        program().toString(),
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--disable-dev-shm-usage",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--user-data-dir=" + profile);
  }
}
