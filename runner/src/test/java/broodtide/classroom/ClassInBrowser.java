package broodtide.classroom;

import broodtide.browser.Chromium;
import broodtide.browser.InstalledBrowser;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;

/** The class page open in a real browser, one of each for all tests of a class. */
abstract class ClassInBrowser {
  static OpenPage page;
  static Chromium browser;

  @BeforeAll
  static void open() throws Exception {
    InstalledBrowser.program();
    page = new OpenPage();
    browser = Chromium.start();
  }

  @AfterAll
  static void close() {
    if (browser != null) {
      browser.close();
    }
    if (page != null) {
      page.close();
    }
  }

  static void visit(String path, int width, int height) throws Exception {
    browser.open(page.address().resolve(path), width, height);
  }
}
