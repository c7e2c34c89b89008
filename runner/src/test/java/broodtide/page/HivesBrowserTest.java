package broodtide.page;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.browser.Axe;
import broodtide.browser.Chromium;
import broodtide.browser.InstalledBrowser;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page for one's own hives where something goes wrong, and without a mouse. */
class HivesBrowserTest {
  private static final String WASHES =
      "date,colony,mites,bees\r\n2026-05-02,Thornbank 1,1,302\r\n2026-07-25,Thornbank 1,7,301\r\n";
  private static final String STUDY =
      """
      {
        "title": "Thornbank", "climate": "temperate", "start": "2026-05-01",
        "until": "2027-04-01", "colony": {"name": "Thornbank 1"}, "surroundings": "sparse",
        "washes": "washes.csv", "plans": [{"name": "wait"}]
      }
      """;
  private static final String CELL = "#counts-table [data-column=note]";

  private static Chromium browser;

  @TempDir private Path folder;
  private OpenHives page;

  @BeforeAll
  static void start() throws Exception {
    InstalledBrowser.program();
    browser = Chromium.start();
  }

  @AfterAll
  static void stop() {
    if (browser != null) {
      browser.close();
    }
  }

  @BeforeEach
  void open() throws IOException {
    page = new OpenHives(folder);
  }

  @AfterEach
  void close() {
    page.close();
    assertThat(page.troubles()).isEmpty();
    browser.complaints().clear();
  }

  private void files() throws IOException {
    Files.writeString(folder.resolve("washes.csv"), WASHES);
    Files.writeString(folder.resolve("study.json"), STUDY);
  }

  /** Opens a step of the page. */
  private void visit(String step) throws Exception {
    browser.open(URI.create("about:blank"), 1280, 900);
    browser.enter(page.start("/hives"), 1280, 900);
    browser.waitFor("document.getElementById('folder')?.textContent");
    step(step);
  }

  private static void step(String step) throws Exception {
    browser.eval("location.hash = '#" + step + "'");
    browser.waitFor("!document.getElementById('" + step + "').hidden");
  }

  private static void typeNote(String text) throws Exception {
    browser.waitFor("document.querySelector('" + CELL + "')");
    browser.eval("document.querySelector('" + CELL + "').focus()");
    browser.type(text);
  }

  private static String note() throws Exception {
    return browser.eval("document.querySelector('" + CELL + "').value").asText();
  }

  private static String notice() throws Exception {
    return browser.eval("document.getElementById('notice').textContent").asText();
  }

  private static void click(String label) throws Exception {
    browser.eval(
        "[...document.querySelectorAll('#notice button')].find(b => b.textContent === '"
            + label
            + "').click()");
  }

  @Test
  void whatWasTypedSurvivesAReload() throws Exception {
    visit("counts");
    typeNote("windy");
    browser.reload();
    browser.waitFor("document.getElementById('notice').textContent.includes('is back')");
    browser.waitFor("document.querySelector('" + CELL + "')?.value === 'windy'");
    assertThat(folder.resolve("washes.csv")).doesNotExist();
  }

  /**
   * Two tabs on one folder: each keeps what was typed into it, and a closed one leaves its text.
   */
  @Test
  void eachTabKeepsWhatWasTypedIntoIt() throws Exception {
    String cell = "document.querySelector('" + CELL + "')";
    files();
    visit("counts");
    typeNote("windy");
    try (Chromium other = browser.tab()) {
      other.enter(page.start("/hives"), 1280, 900);
      other.waitFor("document.getElementById('folder')?.textContent");
      other.eval("location.hash = '#counts'");
      other.waitFor(cell);
      assertThat(other.eval(cell + ".value").asText()).isEmpty();
      other.eval(cell + ".focus()");
      other.type("calm");
      browser.reload();
      browser.waitFor(cell + "?.value === 'windy'");
      other.reload();
      other.waitFor(cell + "?.value === 'calm'");
      assertThat(other.complaints()).isEmpty();
    }
    browser.reload();
    browser.waitFor(cell + "?.value === 'windy'");
    browser.eval("document.getElementById('save').click()");
    browser.waitFor("document.getElementById('unsaved').textContent === 'Saved.'");

    browser.reload();
    browser.waitFor("document.querySelector('#notice button')");
    assertThat(notice()).contains("keeps what you typed before");
    assertThat(note()).isEqualTo("windy");
    click("Use what I typed");
    browser.waitFor(cell + "?.value === 'calm'");
    browser.reload();
    browser.waitFor("document.querySelector('#notice button')");
    click("Leave it");
    browser.reload();
    browser.waitFor(cell + "?.value === 'windy'");
    assertThat(notice()).isEmpty();
  }

  /** The program ends, is said to be gone, and comes back for the same folder. */
  @Test
  void theServerGoneIsSaidAndTypingSurvivesIt() throws Exception {
    files();
    visit("counts");
    int port = page.address().getPort();
    page.close();
    typeNote("windy");
    browser.waitFor("document.getElementById('notice').textContent.includes('no longer answers')");
    typeNote(" and cold");
    assertThat(note()).isEqualTo("windy and cold");
    page = new OpenHives(folder, port);
    browser.enter(page.start("/hives"), 1280, 900);
    browser.waitFor("document.getElementById('notice')?.textContent.includes('is back')");
    step("counts");
    assertThat(note()).isEqualTo("windy and cold");
    browser.eval("document.getElementById('save').click()");
    browser.waitFor("document.getElementById('unsaved').textContent === 'Saved.'");
    assertThat(folder.resolve("washes.csv")).content().contains("Thornbank 1,1,302,windy and cold");
  }

  @Test
  void filesThatACommandChangedAreNotOverwritten() throws Exception {
    files();
    visit("counts");
    typeNote("windy");
    String theirs = WASHES.replace(",1,302", ",3,302");
    Files.writeString(folder.resolve("washes.csv"), theirs);
    browser.eval("document.getElementById('save').click()");
    browser.waitFor("document.querySelector('#notice button')");
    assertThat(notice()).contains("changed by another page or program");
    assertThat(folder.resolve("washes.csv")).content().isEqualTo(theirs);

    click("Keep what I typed");
    browser.waitFor("document.getElementById('notice').textContent.includes('washes.before.csv')");
    assertThat(folder.resolve("washes.csv")).content().isEqualTo(theirs);
    browser.eval("document.getElementById('save').click()");
    browser.waitFor("document.getElementById('unsaved').textContent === 'Saved.'");
    assertThat(folder.resolve("washes.csv")).content().contains("Thornbank 1,1,302,windy");
    assertThat(folder.resolve("washes.before.csv")).content().isEqualTo(theirs);

    typeNote(" and cold");
    Files.writeString(folder.resolve("washes.csv"), theirs);
    browser.eval("document.getElementById('save').click()");
    browser.waitFor("document.querySelector('#notice button')");
    click("Load the files");
    browser.waitFor("document.querySelector('#counts-table [data-column=mites]').value === '3'");
    assertThat(note()).isEmpty();
    assertThat(browser.eval("document.getElementById('unsaved').textContent").asText())
        .isEqualTo("Saved.");
  }

  /** Nothing was typed: the page shows what another program wrote as soon as it is looked at. */
  @Test
  void filesThatChangedWhileNothingWasTypedAreShown() throws Exception {
    files();
    visit("counts");
    browser.waitFor("document.querySelector('" + CELL + "')");
    Files.writeString(folder.resolve("washes.csv"), WASHES.replace(",1,302", ",3,302"));
    browser.eval("window.dispatchEvent(new Event('focus'))");
    browser.waitFor("document.querySelector('#counts-table [data-column=mites]')?.value === '3'");
    assertThat(notice()).contains("changed by another page or program");
  }

  @Test
  void aTableIsDropped() throws Exception {
    visit("counts");
    browser.waitFor("document.querySelector('" + CELL + "')");
    browser.eval(
        "(() => { const d = new DataTransfer(); d.items.add(new File(['Date;Colony;Mites;Bees"
            + "\\n2026-07-25;\\u00dcber 1;7;300\\n'], 'washes.csv', {type: 'text/csv'}));"
            + " document.getElementById('counts-table').dispatchEvent(new DragEvent('drop',"
            + " {dataTransfer: d, bubbles: true, cancelable: true})); })()");
    browser.waitFor(
        "document.querySelector('#counts-table [data-column=colony]').value === '\u00dcber 1'");
    browser.waitFor("document.querySelector('.interval').textContent.startsWith('2.3 per 100')");
  }

  /** The whole way by keys alone, from the climate to the report. */
  @Test
  @Tag("slow")
  void theWholeWayWithoutAMouse() throws Exception {
    visit("where");
    browser.waitFor("document.getElementById('climate')");
    browser.tabTo("#climate");
    browser.keys("Temp");
    browser.waitFor("document.querySelectorAll('.edge').length === 4");
    assertThat(browser.eval("document.getElementById('climate').value").asText())
        .isEqualTo("temperate");
    browser.tabTo(".edge[aria-label='Honey supers: last day']");
    String before = browser.eval("document.activeElement.getAttribute('aria-valuenow')").asText();
    browser.press("ArrowRight");
    browser.press("PageUp");
    assertThat(browser.eval("document.activeElement.getAttribute('aria-valuenow')").asInt())
        .isEqualTo(Integer.parseInt(before) + 8);
    browser.tabTo("a[href='#counts']");
    browser.press("Enter");
    browser.waitFor("!document.getElementById('counts').hidden");
    browser.waitFor("document.querySelector('" + CELL + "')");
    for (String cell : new String[] {"2026-07-25", "Thornbank 1", "4", "300"}) {
      browser.tabTo("#counts-table input");
      browser.keys(cell);
    }
    browser.waitFor("document.querySelector('.interval').textContent.startsWith('1.3 per 100')");
    browser.tabTo("#save");
    browser.press("Enter");
    browser.waitFor("document.getElementById('unsaved').textContent === 'Saved.'");
    browser.tabTo(".steps a[href='#stand']");
    browser.press("Enter");
    browser.waitFor("document.querySelectorAll('#stand .one-hive').length === 1");
    browser.tabTo(".one-hive a[href='#plans']");
    browser.press("Enter");
    browser.waitFor("!document.getElementById('plans').hidden");
    browser.tabTo("#plans-windows");
    browser.press("Enter");
    browser.waitFor("document.querySelector('#plans-map .wide .cells button')");
    browser.tabTo("#plans-map .wide .cells button");
    String open = "document.activeElement.getAttribute('aria-label').includes('not open')";
    browser.press("ArrowDown");
    for (int i = 0; i < 30 && browser.eval(open).asBoolean(); i++) {
      browser.press("ArrowRight");
    }
    String week = browser.eval("document.activeElement.getAttribute('aria-label')").asText();
    browser.press("Enter");
    browser.waitFor("document.querySelectorAll('#plans-edit fieldset').length === 1");
    assertThat(browser.eval("document.getElementById('plans-why').textContent").asText())
        .contains(week.substring(0, week.indexOf(':')));
    browser.tabTo("#plans-go");
    browser.press("Enter");
    browser.waitFor("document.querySelectorAll('#plans-result tbody tr').length === 2");
    browser.tabTo(".steps a[href='#away']");
    browser.press("Enter");
    browser.waitFor("document.getElementById('make-report')");
    browser.tabTo("#make-report");
    browser.press("Enter");
    browser.waitFor("document.getElementById('open-report')");
    assertThat(folder.resolve("broodtide-out/compare/report.html")).isNotEmptyFile();
  }

  /** At 200 % on a window 1280 wide, and in the colours of the system, all is in reach. */
  @Test
  @Tag("slow")
  void largeTypeAndForcedColoursKeepEverythingInReach() throws Exception {
    files();
    visit("stand");
    browser.waitFor("document.querySelectorAll('#stand .one-hive').length === 1");
    step("plans");
    browser.eval("document.getElementById('plans-windows').click()");
    browser.waitFor("document.querySelector('#plans-map .cells button')");
    for (String step : new String[] {"where", "counts", "done", "stand", "plans", "away"}) {
      step(step);
      browser.window(640, 450);
      assertThat(browser.eval("document.documentElement.scrollWidth").asInt())
          .as(step)
          .isLessThanOrEqualTo(640);
      browser.forcedColours(true);
      assertThat(browser.eval("matchMedia('(forced-colors: active)').matches").asBoolean())
          .isTrue();
      assertThat(Axe.violations(browser)).as(step).isEmpty();
      assertThat(browser.eval(UNMARKED)).as(step).isEmpty();
      browser.forcedColours(false);
      assertThat(browser.eval(FAINT)).as(step).isEmpty();
    }
  }

  /** Marks that are told by their fill alone, which forced colours take away. */
  private static final String UNMARKED =
      "[...document.querySelectorAll('.bar, .edge, .flag, .plan, button, input, select')]"
          + ".filter(e => e.offsetWidth && !e.closest('.cells') && e.type !== 'checkbox'"
          + " && e.type !== 'file' && !['Top','Left','Right','Bottom'].some(s =>"
          + " getComputedStyle(e)[`border${s}Style`] !== 'none'"
          + " && parseFloat(getComputedStyle(e)[`border${s}Width`]) >= 1))"
          + ".map(e => e.outerHTML.slice(0, 120))";

  /**
   * Marks with less than 3 to 1 against the paper: edges of controls, bars, and lines and dots of
   * pictures. Bands, grids, halos and fills beside which a line or text says the same are left out.
   */
  private static final String FAINT =
      """
      (() => {
        const light = (c) => {
          const [r, g, b] = c.match(/[\\d.]+/g).map(Number).map((v) => v / 255)
            .map((v) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4));
          return 0.2126 * r + 0.7152 * g + 0.0722 * b;
        };
        const seen = (e) => e.getClientRects().length > 0;
        const marks = [];
        for (const e of document.querySelectorAll('main button, main input, main select, main textarea, .edge')) {
          if (seen(e) && !e.disabled && !e.closest('.cells') && e.type !== 'checkbox' && e.type !== 'file') {
            marks.push([e, getComputedStyle(e).borderTopColor]);
          }
        }
        for (const e of document.querySelectorAll('.bar')) {
          if (seen(e)) marks.push([e, getComputedStyle(e).backgroundColor]);
        }
        for (const e of document.querySelectorAll('.flag')) {
          const s = getComputedStyle(e);
          if (seen(e)) marks.push([e, e.classList.contains('leftward') ? s.borderRightColor : s.borderLeftColor]);
        }
        for (const e of document.querySelectorAll('.piece svg path, .piece svg polyline, .piece svg circle, .piece svg line')) {
          const s = getComputedStyle(e);
          const c = e.tagName === 'circle' && s.fill.startsWith('rgb') ? s.fill : s.stroke;
          const halo = c === 'rgb(255, 255, 255)';
          if (seen(e) && c.startsWith('rgb') && !halo && parseFloat(s.strokeWidth) >= 1.4) marks.push([e, c]);
        }
        return marks.filter(([, c]) => 1.05 / (light(c) + 0.05) < 3)
          .map(([e, c]) => `${c} ${e.outerHTML.slice(0, 120)}`);
      })()
      """;
}
