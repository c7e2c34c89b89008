package broodtide.classroom;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.browser.Axe;
import broodtide.lesson.Lessons;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * axe-core over every page of the class, each stage of a lesson in turn; the widest window in the
 * few colours of a system's own palette.
 */
class ClassAxeTest extends ClassInBrowser {
  private static final List<String> STAGES = List.of("story", "predict", "reveal", "talk");

  static Stream<String> pages() {
    return Stream.concat(
        Stream.of(
            "/",
            "/explore",
            "/explore?a=thymol%402026-08-05&b=thymol%402026-08-05,oxalic-dribble%402026-12-10",
            "/lessons",
            "/lessons/one-wash/worksheet"),
        Lessons.SHELF.names().stream().map(name -> "/lessons/" + name));
  }

  @ParameterizedTest
  @ValueSource(strings = {"/", "/explore", "/lessons/august-october"})
  void findsNothingOnTheFirstPages(String path) throws Exception {
    findsNothing(path);
  }

  @ParameterizedTest
  @Tag("slow")
  @MethodSource("pages")
  void findsNothing(String path) throws Exception {
    for (int width : new int[] {390, 1280, 1920}) {
      browser.forcedColours(width == 1920);
      visit(path, width, 720);
      browser.waitFor("document.querySelector('.live, .row, .sheet')");
      if (!browser.eval("Boolean(document.querySelector('.lesson'))").asBoolean()) {
        clean(path + " at " + width);
        continue;
      }
      for (String stage : STAGES) {
        browser.eval("document.querySelector('.stages [data-stage=" + stage + "]').click()");
        browser.waitFor("document.querySelector('.lesson').dataset.stage === '" + stage + "'");
        clean(path + " at " + width + ", " + stage);
      }
    }
  }

  @AfterEach
  void usualColours() throws Exception {
    browser.forcedColours(false);
  }

  private static void clean(String where) throws Exception {
    assertThat(Axe.violations(browser)).as(where).isEmpty();
  }
}
