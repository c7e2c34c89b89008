package broodtide.classroom;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.lesson.Lesson;
import broodtide.lesson.Lessons;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** A whole evening by a clicker, which sends Page Down and Page Up and nothing else. */
class EveningTest extends ClassInBrowser {
  private static final List<Lesson> ROW = Lessons.all();

  @AfterEach
  void theConsoleIsQuiet() {
    assertThat(browser.complaints()).isEmpty();
    assertThat(page.troubles()).isEmpty();
  }

  private static String stands(int lesson, String stage) {
    return "document.querySelector('.lesson.live[data-lesson=\""
        + ROW.get(lesson).name()
        + "\"][data-stage=\""
        + stage
        + "\"]')";
  }

  /** Presses a key until an expression holds; a stage longer than the window takes several. */
  private static void press(String key, String until) throws Exception {
    for (int i = 0; i < 60; i++) {
      browser.press(key);
      browser.waitFor("document.querySelector('.live:not([aria-busy=true])')");
      if (browser.eval("Boolean(" + until + ")").asBoolean()) {
        return;
      }
      Thread.sleep(100);
    }
    browser.waitFor(until);
  }

  @Test
  void aClickerGoesFromLessonToLessonAndBack() throws Exception {
    visit("/", 1280, 720);
    browser.waitFor("document.querySelector('.row.live')");
    assertThat(browser.eval("document.querySelector('.marked a').textContent").asText())
        .isEqualTo(ROW.get(0).title());
    browser.press("PageDown");
    browser.waitFor(stands(0, "story"));
    press("PageDown", stands(0, "talk"));
    assertThat(browser.eval("document.querySelector('.on').innerText").asText())
        .isEqualTo("Page Down goes on to lesson 2, Page Up back.");
    press("PageDown", stands(1, "story"));
    assertThat(browser.eval("document.querySelector('.step').textContent").asText())
        .isEqualTo("Lesson 2 of " + ROW.size());
    press("PageUp", stands(0, "talk"));
    press("PageUp", stands(0, "story"));
    browser.press("PageUp");
    browser.waitFor("document.querySelector('.row.live') && location.pathname === '/lessons'");
  }

  @Test
  void digitsMarkALessonAndTheLastOneLeadsBackToTheList() throws Exception {
    visit("/", 1280, 720);
    browser.waitFor("document.querySelector('.row.live')");
    browser.keys(Integer.toString(ROW.size()));
    assertThat(browser.eval("document.activeElement.textContent").asText())
        .isEqualTo(ROW.get(ROW.size() - 1).title());
    browser.press("PageDown");
    browser.waitFor(stands(ROW.size() - 1, "story"));
    press("PageDown", stands(ROW.size() - 1, "talk"));
    press("PageDown", "document.querySelector('.row.live') && location.pathname === '/lessons'");
  }

  /** A thumb that stays on the clicker must not run through the evening. */
  @Test
  void aKeyHeldDownStaysInTheStage() throws Exception {
    visit("/lessons/" + ROW.get(1).name(), 1280, 720);
    browser.waitFor(stands(1, "story"));
    for (String key : List.of("PageUp", "ArrowLeft", "ArrowRight")) {
      browser.eval(
          "document.body.dispatchEvent(new KeyboardEvent('keydown', {key: '"
              + key
              + "', repeat: true, bubbles: true}))");
      Thread.sleep(300);
      assertThat(browser.eval("Boolean(" + stands(1, "story") + ")").asBoolean()).isTrue();
    }
  }
}
