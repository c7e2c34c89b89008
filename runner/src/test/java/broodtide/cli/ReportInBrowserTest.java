package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.browser.InstalledBrowser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The report in a real browser, at the width of a phone and of a desk. */
@Tag("outside")
@Tag("slow")
class ReportInBrowserTest {
  /**
   * Measures the report from outside: it stands in a frame, where its own policy forbids scripts.
   */
  private static final String WRAPPER =
      """
      <!DOCTYPE html><html><head><title>start</title></head><body>
      <iframe id="f" style="border:0;width:%dpx;height:900px" srcdoc="%s"></iframe>
      <pre id="said"></pre>
      <script>
      onload = function () {
        var d = document.getElementById('f').contentDocument;
        var wide = d.querySelectorAll('.wide svg')[0].getBoundingClientRect().width;
        var narrow = d.querySelectorAll('.narrow svg')[0].getBoundingClientRect().width;
        document.getElementById('said').textContent =
          'needs=' + d.documentElement.scrollWidth + ' wide=' + Math.round(wide) +
          ' narrow=' + Math.round(narrow) + ' title=' + document.title + '/' + d.title +
          ' text=' + d.body.innerText;
      };
      </script></body></html>
      """;

  @TempDir static Path folder;

  @BeforeAll
  static void needsABrowser() {
    InstalledBrowser.program();
  }

  @Test
  void fitsAPhone() throws Exception {
    String said = look(HostileRecord.csv(), 390);
    assertThat(number(said, "needs")).isLessThanOrEqualTo(390);
    assertThat(number(said, "narrow")).isBetween(330, 390);
    assertThat(number(said, "wide")).isZero();
    holdsItsText(said);
  }

  @Test
  void fitsADesk() throws Exception {
    String said = look(HostileRecord.csv(), 1280);
    assertThat(number(said, "needs")).isLessThanOrEqualTo(1280);
    assertThat(number(said, "wide")).isBetween(700, 1280);
    assertThat(number(said, "narrow")).isZero();
    holdsItsText(said);
  }

  /** Eight hives print on a sheet, a page for each, and at most three more. */
  @Test
  void eightHivesPrintOnTwelvePages() throws Exception {
    Path out = Files.createDirectories(folder.resolve("print"));
    Trial trial =
        Trial.run(
            EightHives.csv(),
            ("compare - --climate cool-maritime --colonies 64 --quiet --out " + out)
                .split(" ", -1));
    assertThat(trial.code()).as(trial.err()).isEqualTo(Main.OK);
    Path pdf = out.resolve("report.pdf");
    List<String> command = new ArrayList<>(InstalledBrowser.command(out.resolve("profile")));
    command.addAll(
        List.of(
            "--no-pdf-header-footer",
            "--print-to-pdf=" + pdf,
            out.resolve("report.html").toUri().toString()));
    Process process =
        new ProcessBuilder(command)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    if (!process.waitFor(120, TimeUnit.SECONDS)) {
      process.destroyForcibly();
    }
    String text = Files.readString(pdf, StandardCharsets.ISO_8859_1);
    long pages = Pattern.compile("/Type\\s*/Page\\b").matcher(text).results().count();
    assertThat(pages).isBetween(9L, 12L);
  }

  private static void holdsItsText(String said) {
    assertThat(said)
        .contains("title=start/Varroa plans compared")
        .contains("3 hives")
        .contains("If you wait: about")
        .contains(HostileRecord.SCRIPT.replace("<", "&lt;").replace(">", "&gt;"))
        .contains("More of this hive")
        .contains("What would change this answer")
        .contains("Cautions");
  }

  private static int number(String said, String name) {
    Matcher m = Pattern.compile(name + "=(\\d+)").matcher(said);
    assertThat(m.find()).as(said).isTrue();
    return Integer.parseInt(m.group(1));
  }

  private static String look(String csv, int width) throws IOException, InterruptedException {
    Path out = Files.createDirectories(folder.resolve("w" + width));
    Trial trial =
        Trial.run(
            csv, ("compare - --climate boreal --colonies 64 --quiet --out " + out).split(" ", -1));
    assertThat(trial.code()).as(trial.err()).isEqualTo(Main.OK);
    String html = Files.readString(out.resolve("report.html"));
    Path wrapper = out.resolve("wrapper.html");
    String inside = html.replace("&", "&amp;").replace("\"", "&quot;");
    Files.writeString(wrapper, String.format(WRAPPER, width, inside));
    Path dom = out.resolve("dom.txt");
    List<String> command = new ArrayList<>(InstalledBrowser.command(out.resolve("profile")));
    command.addAll(List.of("--window-size=1400,1000", "--dump-dom", wrapper.toUri().toString()));
    Process process =
        new ProcessBuilder(command)
            .redirectOutput(dom.toFile())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    if (!process.waitFor(120, TimeUnit.SECONDS)) {
      process.destroyForcibly();
    }
    String text = Files.readString(dom);
    return text.substring(text.indexOf("<pre id=\"said\">"));
  }
}
