package broodtide.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FontsTest {
  @TempDir Path dir;

  @Test
  void everyWayOfLackingFontsGivesTheOneMessage() {
    assertThatThrownBy(
            () ->
                Fonts.ready(
                    () -> {
                      throw new InternalError("Fontconfig head is null");
                    }))
        .isInstanceOf(FontsMissing.class)
        .hasMessageContaining("fonts-dejavu-core")
        .hasMessageContaining("SVG");
    assertThatThrownBy(() -> Fonts.ready(() -> 0.0)).isInstanceOf(FontsMissing.class);
    Fonts.ready(() -> 7.0);
  }

  /** A second program whose font settings name an empty folder. */
  @Test
  void aMachineWithoutFontsStillDrawsSvg() throws IOException, InterruptedException {
    assumeTrue(System.getProperty("os.name", "").equals("Linux"));
    Path none = Files.createDirectory(dir.resolve("none"));
    Path config = dir.resolve("fonts.conf");
    Files.writeString(
        config, "<?xml version=\"1.0\"?><fontconfig><dir>" + none + "</dir></fontconfig>");
    ProcessBuilder builder =
        new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Duser.home=" + none,
            "-cp",
            System.getProperty("java.class.path"),
            WithoutFonts.class.getName());
    builder.environment().put("FONTCONFIG_FILE", config.toString());
    Process process = builder.redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(said).contains("svg drawn").contains("apt-get install libfontconfig1");
  }

  /** Run by the test above. */
  static final class WithoutFonts {
    private WithoutFonts() {}

    public static void main(String[] args) {
      String svg = InventedSeason.forecast().svg();
      System.out.println(svg.startsWith("<svg") ? "svg drawn" : "no svg");
      try {
        InventedSeason.forecast().png();
        System.out.println("png drawn");
      } catch (FontsMissing e) {
        System.out.println(e.getMessage());
      }
    }
  }
}
