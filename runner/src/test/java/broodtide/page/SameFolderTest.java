package broodtide.page;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.browser.Chromium;
import broodtide.browser.InstalledBrowser;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A folder of the command line in the browser. */
@Tag("slow")
class SameFolderTest {
  @TempDir private Path folder;

  @Test
  void aFolderOfTheCommandLineStandsAtOnce() throws Exception {
    InstalledBrowser.program();
    Files.writeString(
        folder.resolve("washes.csv"),
        "date,colony,mites,bees,weather\r\n2026-05-02,Thornbank 1,1,302,dull\r\n"
            + "2026-07-25,Thornbank 1,7,301,fair\r\n",
        StandardCharsets.UTF_8);
    Files.writeString(
        folder.resolve("study.json"),
        """
        {
          // A remark of the user's own.
          "title": "Thornbank", "climate": "temperate", "start": "2026-05-01",
          "until": "2027-04-01", "colony": {"name": "Thornbank 1"}, "surroundings": "sparse",
          "washes": "washes.csv",
          "plans": [{"name": "wait"}, {"name": "August", "controls": [
            {"use": "thymol", "start": "2026-08-18"}]}]
        }
        """,
        StandardCharsets.UTF_8);
    try (OpenHives page = new OpenHives(folder);
        Chromium browser = Chromium.start()) {
      browser.enter(page.start("/hives"), 1280, 900);
      browser.waitFor("document.querySelectorAll('#stand .one-hive').length === 1", 90);
      assertThat(browser.eval("document.querySelector('#stand .lead').textContent").asText())
          .contains("treatment threshold of 3");
      assertThat(browser.complaints()).isEmpty();
      assertThat(page.troubles()).isEmpty();
    }
  }
}
