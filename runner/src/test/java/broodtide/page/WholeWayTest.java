package broodtide.page;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.browser.Axe;
import broodtide.browser.Chromium;
import broodtide.browser.InstalledBrowser;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A newcomer's whole way through the page, in a real browser: eight invented hives. */
@Tag("slow")
class WholeWayTest {
  private static final String ROWS =
      """
      date\thive\tmites\tbees
      2026-05-02\tThornbank 1\t1\t302
      2026-05-02\tThornbank 2\t0\t298
      2026-05-02\tThornbank 3\t2\t310
      2026-05-02\tThornbank 4\t1\t295
      2026-05-02\tOldmill A\t0\t300
      2026-05-02\tOldmill B\t1\t305
      2026-05-02\tOldmill C\t3\t299
      2026-05-02\tOldmill D\t0\t
      2026-07-25\tThornbank 1\t7\t301
      2026-07-25\tThornbank 2\t2\t300
      2026-07-25\tThornbank 3\t12\t306
      2026-07-25\tThornbank 4\t4\t290
      2026-07-25\tOldmill A\t1\t300
      2026-07-25\tOldmill B\t5\t304
      2026-07-25\tOldmill C\t41O\t300
      2026-07-25\tOldmill D\t2\t
      """
          .replace("\thive\t", "\tcolony\t");

  @TempDir private Path folder;

  @Test
  void eightHivesFromTheFirstCountToTheCalendar() throws Exception {
    InstalledBrowser.program();
    try (OpenHives page = new OpenHives(folder);
        Chromium browser = Chromium.start()) {
      browser.enter(page.start("/"), 1280, 900);
      look(browser, "doors");
      browser.eval("document.querySelector('.doors a').click()");
      browser.waitFor("document.querySelector('#where:not([hidden]) select')");
      choose(browser, "[name=winter-bees]", "08-15");
      choose(browser, "[name=midwinter-brood]", "none");
      choose(browser, "[name=drone-brood]", "03-25");
      browser.waitFor("document.querySelector('.found')?.textContent.includes('agrees')");
      browser.waitFor(
          "document.querySelector('.found')?.textContent.includes('climate: temperate')");
      look(browser, "questions");
      browser.eval("document.querySelector('.found button').click()");
      browser.waitFor("document.querySelectorAll('.edge').length === 4");
      assertThat(browser.eval("document.querySelector('#climate').value").asText())
          .isEqualTo("temperate");
      look(browser, "where");

      go(browser, "counts");
      browser.waitFor("document.querySelector('#counts-table input')");
      paste(browser, ROWS);
      browser.waitFor("document.querySelectorAll('#counts-table tbody tr').length >= 16");
      browser.waitFor("document.querySelector('#counts-table [aria-invalid]')");
      look(browser, "counts");
      assertThat(
              browser
                  .eval(
                      "document.querySelector('#counts-table"
                          + " [aria-invalid]').closest('tr').dataset.row")
                  .asText())
          .isEqualTo("14");
      assertThat(browser.eval("document.querySelectorAll('.interval')[8].textContent").asText())
          .startsWith("2.3 per 100, 90 % interval 1.1 to 4.3");
      browser.eval(
          "(() => { const i = document.querySelector('#counts-table [aria-invalid]'); i.value ="
              + " '9'; i.dispatchEvent(new Event('input', {bubbles: true})); })()");
      browser.waitFor("!document.querySelector('#counts-table [aria-invalid]')");
      browser.waitFor("document.querySelector('[data-row=\"14\"] .interval').textContent");
      browser.eval("document.getElementById('save').click()");
      browser.waitFor("document.getElementById('unsaved').textContent === 'Saved.'");
      assertThat(folder.resolve("washes.csv")).content().contains("Oldmill C,9,300");

      go(browser, "done");
      browser.waitFor("document.querySelector('#done-what option')");
      browser.eval(
          "(() => { document.getElementById('done-date').value = '2026-05-10';"
              + " document.getElementById('done-what').value = 'drone-comb-part';"
              + " document.getElementById('done-form').requestSubmit(); })()");
      browser.waitFor("document.querySelector('#done-strip .flag')");
      look(browser, "done");

      go(browser, "stand");
      browser.waitFor("document.querySelectorAll('#stand .one-hive').length === 8", 240);
      assertThat(folder.resolve("treatments.csv")).content().contains("drone-comb-part");
      look(browser, "stand");
      assertThat(browser.eval("document.querySelector('#stand .lead').textContent").asText())
          .contains("of 8 hives");

      go(browser, "plans");
      browser.eval("document.getElementById('plans-windows').click()");
      browser.waitFor("document.querySelector('#plans-map .wide .cells button')", 120);
      browser.eval(
          "document.querySelector('#plans-map .wide .cells button[aria-label*=\"not"
              + " open\"]').click()");
      assertThat(browser.eval("document.getElementById('plans-why').textContent").asText())
          .isNotEmpty();
      browser.eval(
          "document.querySelectorAll('#plans-map .wide .cells button:not([aria-label*=\"not"
              + " open\"])')[3].click()");
      browser.waitFor("document.querySelectorAll('#plans-edit fieldset').length === 1");
      browser.eval("document.getElementById('plans-go').click()");
      browser.waitFor("document.querySelectorAll('#plans-result tbody tr').length === 2", 120);
      assertThat(
              browser
                  .eval("document.querySelectorAll('#plans-result thead th')[1].textContent")
                  .asText())
          .isEqualTo("Lost over winter");
      look(browser, "plans");

      go(browser, "away");
      browser.waitFor("document.getElementById('make-report')");
      look(browser, "away");
      JsonNode calendar =
          page.asked(
              "calendar",
              OpenHives.object()
                  .put(
                      "plan",
                      browser
                          .eval("document.querySelectorAll('#remind-plan option')[1].value")
                          .asText()));
      CalendarReader events = CalendarReader.read(calendar.path("text").asText());
      assertThat(events.of("SUMMARY").get(0)).startsWith("Wash: ");
      assertThat(events.of("DTSTART")).hasSizeGreaterThan(1).contains("20260822");
      browser.eval("document.getElementById('make-report').click()");
      browser.waitFor("document.getElementById('open-report')", 240);
      String report =
          browser.eval("document.getElementById('open-report').getAttribute('href')").asText();
      browser.enter(page.address().resolve(report), 1280, 900);
      browser.waitFor("document.querySelectorAll('section.colony').length === 8");
      assertThat(
              browser.eval("getComputedStyle(document.querySelector('.lead')).fontWeight").asText())
          .isEqualTo("600");
      assertThat(Files.readAllBytes(folder.resolve("broodtide-out/compare/report.html")))
          .isNotEmpty();
      assertThat(browser.pdf(8.27, 11.69)).startsWith("%PDF".getBytes(StandardCharsets.US_ASCII));
      assertThat(browser.complaints()).isEmpty();
      assertThat(page.troubles()).isEmpty();
    }
  }

  private static void go(Chromium browser, String step) throws Exception {
    browser.eval("document.querySelector('.steps a[href=\"#" + step + "\"]').click()");
    browser.waitFor("!document.getElementById('" + step + "').hidden");
  }

  private static void choose(Chromium browser, String select, String value) throws Exception {
    browser.eval(
        "(() => { const s = document.querySelector('"
            + select
            + "'); s.value = '"
            + value
            + "'; s.dispatchEvent(new Event('change', {bubbles: true})); })()");
  }

  private static void paste(Chromium browser, String text) throws Exception {
    browser.eval(
        "(() => { const d = new DataTransfer(); d.setData('text/plain', "
            + OpenHives.JSON.writeValueAsString(text)
            + "); document.querySelector('#counts-table input').dispatchEvent(new"
            + " ClipboardEvent('paste', {clipboardData: d, bubbles: true, cancelable: true}));"
            + " })()");
  }

  /** Every step is held to the rules of accessibility at three widths. */
  private static void look(Chromium browser, String step) throws Exception {
    for (int width : List.of(390, 1280, 1920)) {
      browser.window(width, 900);
      assertThat(browser.eval("document.documentElement.scrollWidth").asInt())
          .as("%s is wider than the window at %d", step, width)
          .isLessThanOrEqualTo(width);
      JsonNode found = Axe.violations(browser);
      assertThat(found).as("%s at %d", step, width).isEmpty();
    }
    browser.window(1280, 900);
  }
}
