package broodtide.classroom;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.lesson.Lessons;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The page in a real browser: keys, pointer, small and large windows. */
@Tag("slow")
class BrowserTest extends ClassInBrowser {
  @AfterEach
  void theConsoleIsQuiet() {
    assertThat(browser.complaints()).isEmpty();
    assertThat(page.troubles()).isEmpty();
  }

  /** From the story to the predictions, as a clicker goes. */
  private static void predict() throws Exception {
    browser.waitFor("document.querySelector('.lesson.live')");
    clickTo("predict");
  }

  /** A clicker pages through a stage that is longer than the window, and then goes on. */
  private static void clickTo(String stage) throws Exception {
    String there = "document.querySelector('.lesson').dataset.stage === '" + stage + "'";
    for (int i = 0; i < 30 && !browser.eval(there).asBoolean(); i++) {
      browser.press("PageDown");
      Thread.sleep(400);
    }
    browser.waitFor(there);
  }

  private static String text(String id) throws Exception {
    return browser.eval("document.getElementById('" + id + "').textContent").asText();
  }

  private static String chart(String id) throws Exception {
    return browser
        .eval("document.querySelector('#" + id + " svg').getAttribute('aria-label')")
        .asText();
  }

  private static void explore(String query) throws Exception {
    visit("/explore" + query, 1280, 720);
    browser.waitFor("document.querySelector('#plot-mites svg') && share.value");
  }

  @Test
  void aFlagMovesByKeyAndByPointer() throws Exception {
    explore("?a=thymol%402026-08-05");
    assertThat(chart("plot-mites")).contains("on adult bees", "in worker cells", "in drone cells");
    assertThat(text("scenarios")).contains("5 August: Thymol", "In trials it killed");
    browser.eval("document.querySelector('[data-flag]').focus()");
    browser.press("ArrowRight");
    browser.waitFor("scenarios.textContent.includes('6 August: Thymol')");
    assertThat(browser.eval("document.activeElement.getAttribute('aria-valuetext')").asText())
        .startsWith("6 August");
    double x = browser.eval("document.activeElement.getBoundingClientRect().left").asDouble();
    double y = browser.eval("document.activeElement.getBoundingClientRect().top").asDouble();
    browser.drag(x + 1, y + 8, x + 120, y + 8);
    browser.waitFor("!scenarios.textContent.includes('August: Thymol')");
    assertThat(browser.eval("location.search").asText()).contains("a=thymol%402026-0");
    browser.eval("document.querySelector('[data-flag]').focus()");
    browser.press("Delete");
    browser.waitFor("scenarios.textContent.includes('No action.')");
  }

  @Test
  void scenariosAreOverlaidAndTheirSentencesKept() throws Exception {
    explore("?a=thymol%402026-08-05&mites=1");
    browser.eval("copy.click()");
    browser.waitFor("document.querySelectorAll('.scenario').length === 2");
    browser.waitFor("document.querySelectorAll('#plot-mites .curve.kept').length === 3");
    browser.eval(
        "(() => { const d = document.querySelector('[data-date=\"1-0\"]'); d.value ="
            + " '2026-10-05'; d.dispatchEvent(new Event('change')); })()");
    browser.waitFor("scenarios.textContent.includes('5 October: Thymol')");
    assertThat(text("scenarios")).contains("5 August: Thymol");
    String address = text("share") + browser.eval("share.value").asText();
    browser.open(URI.create(address), 1280, 720);
    browser.waitFor("share.value");
    assertThat(text("scenarios")).contains("5 August: Thymol", "5 October: Thymol");
  }

  @Test
  void theFormPutsFlagsAndTurnsTheYear() throws Exception {
    explore("");
    browser.eval("sets.elements.add.value = 'oxalic-dribble'");
    browser.eval("document.getElementById('put').click()");
    browser.waitFor("scenarios.textContent.includes('15 August: Oxalic acid')");
    browser.eval(
        "(() => { const s = sets.elements.south; s.value = 'yes'; s.dispatchEvent(new"
            + " Event('input', {bubbles: true})); })()");
    browser.waitFor("/1[0-9] February: Oxalic acid/.test(scenarios.textContent)");
    browser.eval("document.querySelector('.months summary').click()");
    assertThat(browser.eval("months.rows.length").asInt()).isEqualTo(13);
  }

  @Test
  void theServerGoneIsSaid() throws Exception {
    OpenPage other = new OpenPage();
    browser.open(other.address().resolve("/explore"), 1280, 720);
    browser.waitFor("share.value");
    other.close();
    browser.eval(
        "(() => { const m = sets.elements.mites; m.value = 2; m.dispatchEvent(new Event('input',"
            + " {bubbles: true})); })()");
    browser.waitFor("problem.textContent.includes('no longer answers')");
    browser.complaints().clear();
  }

  @Test
  void choosingFirstThenLooking() throws Exception {
    visit("/lessons/drone-magnet", 1280, 900);
    predict();
    assertThat(browser.eval("reveal.hidden").asBoolean()).isTrue();
    browser.eval("document.querySelector('.pairs').open = true");
    browser.eval("document.querySelector('button.main').focus()");
    browser.press("Enter");
    assertThat(text("problem")).contains("Pick an answer first");
    browser.eval("document.querySelector('input[name=choice]').focus()");
    browser.press(" ");
    browser.press("ArrowDown");
    browser.press("ArrowDown");
    browser.press("Enter");
    browser.waitFor("!reveal.hidden && verdict.textContent");
    assertThat(text("verdict")).contains("You saw it coming");
    assertThat(text("answer")).contains("You said, and the model shows: More than a third");
    assertThat(text("figures")).contains("45 %");
    assertThat(browser.eval("document.activeElement.id").asText()).isEqualTo("reveal-title");
    assertThat(browser.eval("document.querySelectorAll('#charts .plot > svg').length").asInt())
        .isEqualTo(2);
  }

  /** Several pairs' answers stand beside the model's, and none is kept. */
  @Test
  void whatPairsSaidStandsBesideTheModel() throws Exception {
    visit("/lessons/drone-magnet", 1280, 720);
    predict();
    for (int choice : new int[] {2, 0}) {
      browser.eval("document.querySelectorAll('input[name=choice]')[" + choice + "].click()");
      browser.eval("document.getElementById('pair').click()");
    }
    assertThat(text("pairs")).contains("Pair 1: More than a third", "Pair 2: One in a hundred");
    browser.press("PageDown");
    browser.waitFor("document.querySelector('.lesson').dataset.stage === 'reveal'");
    assertThat(text("verdict")).isEqualTo("1 of 2 pairs saw it coming.");
    assertThat(text("answer"))
        .contains("Pair 1: More than a third (as the model shows)", "Pair 2: One in a hundred");

    visit("/lessons/spring-count", 1280, 720);
    predict();
    for (String value : new String[] {"2", "7"}) {
      browser.eval(
          "document.querySelectorAll('input[data-day]').forEach(i => { if (!i.readOnly) i.value ="
              + " "
              + value
              + "; })");
      browser.eval("document.getElementById('pair').click()");
    }
    browser.eval("document.querySelector('button.main').click()");
    browser.waitFor("document.querySelector('.lesson').dataset.stage === 'reveal'");
    assertThat(browser.eval("document.querySelector('#answer thead').innerText").asText())
        .containsSubsequence("Pair 1", "Pair 2", "The model");
  }

  /** The evening by a clicker alone: story, hands, reveal, talk, and back. */
  @Test
  void aClickerLeadsThroughTheEvening() throws Exception {
    visit("/lessons/august-october", 1280, 720);
    predict();
    browser.eval("document.querySelector('.hand').click()");
    browser.eval("document.querySelector('.hand').click()");
    browser.eval("document.querySelector('[data-fewer=\"1\"]').click()");
    assertThat(text("hands-said")).isEqualTo("1 hand in all.");
    browser.press("PageDown");
    browser.waitFor("document.querySelector('.lesson').dataset.stage === 'reveal'");
    browser.waitFor("document.querySelectorAll('#charts .plot > svg').length === 3");
    assertThat(text("verdict")).isEqualTo("Most hands: The one treated in August.");
    assertThat(text("figures")).contains("winter loss", "bees at the spring low");
    String last = "document.querySelector('#charts figure:last-child').getBoundingClientRect()";
    assertThat(browser.eval(last + ".bottom > innerHeight").asBoolean()).isTrue();
    browser.press("PageDown");
    browser.waitFor(last + ".bottom < innerHeight");
    clickTo("talk");
    browser.press("ArrowLeft");
    browser.waitFor("document.querySelector('.lesson').dataset.stage === 'reveal'");
    browser.press("ArrowLeft");
    browser.waitFor("document.querySelector('.lesson').dataset.stage === 'predict'");
    browser.keys("2");
    assertThat(text("hands-said")).isEqualTo("2 hands in all.");
    browser.press("Backspace");
    assertThat(text("hands-said")).isEqualTo("1 hand in all.");
    assertThat(browser.eval("localStorage.length + sessionStorage.length").asInt())
        .as("nothing is kept of the class")
        .isZero();
  }

  private static void revealed(String lesson) throws Exception {
    visit("/lessons/" + lesson, 1280, 720);
    predict();
    browser.press("ArrowRight");
    browser.waitFor("document.querySelector('.lesson').dataset.stage === 'reveal'");
    browser.waitFor("document.querySelector('#charts .plot > svg')");
  }

  /** On a projector the class sees a picture without scrolling. */
  @ParameterizedTest
  @ValueSource(strings = {"august-october", "did-it-work", "one-wash", "unknowns"})
  void aRevealShowsAPictureAtFirstSight(String lesson) throws Exception {
    revealed(lesson);
    browser.waitFor(
        "document.querySelector('#charts figure').getBoundingClientRect().bottom <"
            + " innerHeight && document.querySelector('#charts figure svg, #charts figure img')");
  }

  /** What washes say of a treatment: a picture and a sentence for each hive. */
  @Test
  void washesJudgeATreatmentAtTheReveal() throws Exception {
    revealed("did-it-work");
    browser.waitFor("[...document.querySelectorAll('.judged img')].length === 2");
    browser.waitFor(
        "[...document.querySelectorAll('.judged img')].every(i => i.complete && i.naturalWidth)");
    assertThat(browser.eval("document.querySelectorAll('.judged p')[0].textContent").asText())
        .startsWith("Worked as expected")
        .contains("90 % interval");
    assertThat(browser.eval("document.querySelectorAll('.judged p')[1].textContent").asText())
        .startsWith("Cannot tell")
        .contains("90 % interval");
    assertThat(page.get("/lessons/did-it-work/judged/1").body())
        .contains("before the washes", "with the washes", "without the treatment");
    assertThat(page.get("/lessons/did-it-work/judged/3").statusCode()).isEqualTo(404);
    assertThat(page.get("/lessons/unknowns/judged/1").statusCode()).isEqualTo(404);
  }

  /** Where a colony is lost, the words beside its curve lie on no curve. */
  @ParameterizedTest
  @ValueSource(strings = {"did-it-work", "august-october"})
  void theWordsOfALostColonyLieOnNoCurve(String lesson) throws Exception {
    revealed(lesson);
    assertThat(browser.eval("document.querySelectorAll('#charts text.end').length").asInt())
        .isPositive();
    assertThat(
            browser
                .eval(
                    "(() => { let hit = 0; for (const end of document.querySelectorAll('#charts"
                        + " text.end')) { const b = end.getBoundingClientRect(); for (const c of"
                        + " end.ownerSVGElement.querySelectorAll('path.curve')) { const m ="
                        + " c.getScreenCTM(); for (let l = 0; l < c.getTotalLength(); l += 1) {"
                        + " const p = c.getPointAtLength(l).matrixTransform(m); if (p.x > b.left &&"
                        + " p.x < b.right && p.y > b.top + 2 && p.y < b.bottom - 2) { hit++; } } }"
                        + " } return hit; })()")
                .asInt())
        .isZero();
  }

  /** What is printed before the reveal holds no answer. */
  @ParameterizedTest
  @ValueSource(strings = {"august-october", "drone-magnet"})
  void printingBeforeTheRevealPrintsNoAnswer(String lesson) throws Exception {
    visit("/lessons/" + lesson, 1280, 720);
    browser.waitFor("document.querySelector('.lesson.live')");
    String because = page.json("/api/lessons/" + lesson).findValuesAsText("because").get(0);
    assertThat(browser.eval("document.body.textContent").asText()).doesNotContain(because);
  }

  /** Without a typed range the reveal still shows the washes, for a clicker has no digits. */
  @Test
  void handsAloneShowTheWashes() throws Exception {
    revealed("one-wash");
    assertThat(text("verdict")).contains("The washes found", "apart.");
    assertThat(browser.eval("document.querySelectorAll('#answer circle').length").asInt())
        .isEqualTo(20);
    assertThat(text("answer")).contains("90 % interval").doesNotContain("your range");
  }

  @Test
  void theClassesOwnCountsStandBesideTheTheory() throws Exception {
    visit("/lessons/one-wash", 1280, 720);
    predict();
    browser.eval(
        "lowest.value = 5; highest.value = 13; counted.value = '9, 6 12 8;11';"
            + " document.querySelector('button.main').click()");
    browser.waitFor("document.querySelector('#answer .theory')");
    assertThat(text("answer")).contains("The class's own 5 counts");
    browser.eval("counted.value = '9, x'; document.querySelector('button.main').click()");
    assertThat(text("problem")).contains("whole numbers from 0 to 300");
  }

  @Test
  void drawingByPointerAndByKeys() throws Exception {
    visit("/lessons/spring-count", 1280, 900);
    predict();
    browser.waitFor("document.querySelector('#pad svg')");
    browser.eval("pad.scrollIntoView({behavior: 'instant', block: 'center'})");
    double left = browser.eval("pad.querySelector('svg').getBoundingClientRect().left").asDouble();
    double top = browser.eval("pad.querySelector('svg').getBoundingClientRect().top").asDouble();
    double width = browser.eval("pad.querySelector('svg').clientWidth").asDouble();
    double height = browser.eval("pad.querySelector('svg').clientHeight").asDouble();
    browser.drag(left + 0.2 * width, top + 0.5 * height, left + 0.97 * width, top + 0.2 * height);
    assertThat(
            browser
                .eval("[...document.querySelectorAll('input[data-day]')].every(i => i.value)")
                .asBoolean())
        .as("every day has a value")
        .isTrue();
    browser.eval("document.querySelectorAll('input[data-day]')[2].select()");
    browser.eval("document.querySelectorAll('input[data-day]')[2].focus()");
    browser.type("1.8");
    browser.press("Enter");
    browser.waitFor("!reveal.hidden && verdict.textContent");
    assertThat(text("verdict")).containsPattern(Pattern.compile("[0-5] of [1-5] times"));
    assertThat(text("answer")).contains("10 April").contains("1.8");
    assertThat(browser.eval("document.querySelectorAll('#pad path').length").asInt())
        .as("the learner's line and the model's")
        .isEqualTo(2);
  }

  @Test
  void washesAreDrawnAgainFromAnotherSeed() throws Exception {
    visit("/lessons/one-wash", 1280, 900);
    predict();
    browser.eval(
        "lowest.value = 5; highest.value = 13; document.querySelector('button.main').click()");
    browser.waitFor("document.querySelectorAll('#answer circle').length === 20");
    String first = text("answer");
    assertThat(first).contains("Seed 1.");
    browser.eval("more.click()");
    browser.waitFor("answer.textContent.includes('Seed 2.')");
    assertThat(text("answer")).isNotEqualTo(first);
  }

  @ParameterizedTest
  @ValueSource(ints = {320, 390, 768, 1280, 1920})
  void nothingReachesBeyondTheWindow(int width) throws Exception {
    for (String path :
        new String[] {
          "/explore",
          "/lessons",
          "/lessons/neighbour",
          "/lessons/drone-magnet",
          "/lessons/one-wash",
          "/lessons/doubling/worksheet"
        }) {
      visit(path, width, 900);
      for (String size : new String[] {"no", "yes"}) {
        browser.eval(
            "(() => { const b = document.getElementById('large'); if"
                + " ((b.getAttribute('aria-pressed') === 'true') !== ('"
                + size
                + "' === 'yes'))"
                + " b.click(); })()");
        browser.waitFor("true");
        assertThat(
                browser
                    .eval(
                        "document.documentElement.scrollWidth -"
                            + " document.documentElement.clientWidth")
                    .asInt())
            .as("%s at %d, large type: %s", path, width, size)
            .isLessThanOrEqualTo(0);
      }
    }
    browser.eval("localStorage.clear()");
  }

  @ParameterizedTest
  @ValueSource(ints = {320, 390, 1280})
  void norDoesAReveal(int width) throws Exception {
    for (String lesson : new String[] {"neighbour", "august-october", "one-wash"}) {
      visit("/lessons/" + lesson, width, 900);
      browser.waitFor("document.getElementById('large')");
      browser.eval(
          "(() => { document.querySelectorAll('input[type=number]').forEach(i => {"
              + " if (!i.readOnly && i.id !== 'seed') i.value = 9; });"
              + " document.querySelector('input[name=choice]')?.click();"
              + " document.querySelector('button.main').click(); })()");
      browser.waitFor("!reveal.hidden && document.querySelector('#charts .plot > svg')");
      assertThat(
              browser
                  .eval(
                      "document.documentElement.scrollWidth - document.documentElement.clientWidth")
                  .asInt())
          .as("%s at %d", lesson, width)
          .isLessThanOrEqualTo(0);
    }
  }

  /** What a screen reader needs: names for every control, one main heading, a language. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "/explore",
        "/lessons",
        "/lessons/neighbour",
        "/lessons/one-wash",
        "/lessons/august-october",
        "/lessons/doubling/worksheet"
      })
  void everythingHasAName(String path) throws Exception {
    visit(path, 1280, 900);
    assertThat(browser.eval("document.documentElement.lang").asText()).isEqualTo("en");
    assertThat(browser.eval("document.querySelectorAll('h1').length").asInt()).isEqualTo(1);
    assertThat(browser.eval("document.querySelectorAll('main').length").asInt()).isEqualTo(1);
    assertThat(
            browser
                .eval(
                    "[...document.querySelectorAll('input, select')].filter(e => e.type !=="
                        + " 'hidden' && !e.ariaLabel && !(e.labels && [...e.labels].some(l =>"
                        + " l.textContent.trim()))).map(e => e.outerHTML).join()")
                .asText())
        .isEmpty();
    assertThat(
            browser
                .eval(
                    "[...document.querySelectorAll('button, a')].filter(e =>"
                        + " !e.textContent.trim()).length")
                .asInt())
        .isZero();
    assertThat(
            browser
                .eval(
                    "[...document.querySelectorAll('[id]')].map(e => e.id).filter((id, i, all) =>"
                        + " all.indexOf(id) !== i).join()")
                .asText())
        .as("no two have the same id")
        .isEmpty();
  }

  static List<String> lessons() {
    return Lessons.SHELF.names();
  }

  /** One sheet for learners, two for the teacher, none blank, on A4 and on letter. */
  @ParameterizedTest
  @Tag("slow")
  @MethodSource("lessons")
  void worksheetsFitTheirSheets(String lesson) throws Exception {
    visit("/lessons/" + lesson + "/worksheet", 1000, 900);
    assertThat(sheets(8.27, 11.69)).as("A4").isEqualTo(3);
    assertThat(sheets(8.5, 11)).as("letter").isEqualTo(3);
  }

  private static long sheets(double width, double height) throws Exception {
    String pdf = new String(browser.pdf(width, height), StandardCharsets.ISO_8859_1);
    return Pattern.compile("/Type\\s*/Page\\b(?!s)").matcher(pdf).results().count();
  }

  private static String quoted(String text) {
    return "'" + text.replace("\\", "\\\\").replace("'", "\\'") + "'";
  }
}
