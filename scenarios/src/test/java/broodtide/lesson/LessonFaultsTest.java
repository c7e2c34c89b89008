package broodtide.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.forms.Source;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A lesson that cannot be used is refused with one clear message, whatever is wrong with it. */
class LessonFaultsTest {
  private static final String LESSON =
      """
      {
        "name": "a-lesson",
        "number": 1,
        "title": "t",
        "story": "s",
        "question": "q",
        "settings": [
          {
            "title": "one",
            "climate": "temperate",
            "start": "2026-03-01",
            "until": "2026-09-01",
            "colony": {"name": "A", "infestation": 1},
            "plans": [{"name": "wait"}]
          }
        ],
        "task": {"kind": "draw", "plan": "wait", "show": "mites", "days": ["2026-03-01", "2026-05-01", "2026-07-01"], "top": 5000},
        "charts": [{"title": "c", "show": ["mites", "adults"]}],
        "figures": [{"say": "f", "measure": {"plan": "wait", "show": "mites", "on": "2026-05-01"}}],
        "reveal": "r",
        "teacher": "t",
        "discussion": [{"ask": "d", "answer": "a"}],
        "evening": [{"minutes": 5, "what": "w"}],
        "claims": [{"say": "c", "larger": {"plan": "wait", "result": "winter-loss"}, "smaller": {"number": 0}}],
        "sources": ["choice"]
      }
      """;

  @Test
  void theLessonItselfIsSound() {
    assertThat(faults(LESSON)).isEmpty();
  }

  @Test
  void aCautionMayStandAndIsWrittenBack() {
    String with = LESSON.replace("\"question\"", "\"caution\": \"Mind the bees.\", \"question\"");
    Lesson lesson = LessonFile.read(Source.of("lesson.json", with));
    assertThat(lesson.caution()).contains("Mind the bees.");
    assertThat(LessonFile.write(lesson)).contains("\"caution\": \"Mind the bees.\"");
    assertThat(LessonFile.read(Source.of("lesson.json", LESSON)).caution()).isEmpty();
  }

  private static final String TREATED =
      LESSON
          .replace(
              "[{\"name\": \"wait\"}]",
              "[{\"name\": \"wait\"}, {\"name\": \"t\", \"controls\": [{\"use\":"
                  + " \"amitraz-strips\", \"start\": \"2026-06-01\"}]}]")
          .replace("\"mites\", \"adults\"", "\"mites\"");

  private static String judged(String plan, String washes) {
    return TREATED.replace(
        "\"figures\"",
        "\"judged\": [{\"hive\": \"A\", \"plan\": \""
            + plan
            + "\", \"washes\": ["
            + washes
            + "]}], \"figures\"");
  }

  private static String wash(String date, int mites) {
    return "{\"date\": \"" + date + "\", \"mites\": " + mites + ", \"bees\": 300}";
  }

  @Test
  void aHiveMayBeJudgedAndIsWrittenBack() {
    String both = wash("2026-05-30", 12) + ", " + wash("2026-07-20", 3);
    Lesson lesson = LessonFile.read(Source.of("lesson.json", judged("t", both)));
    assertThat(lesson.judged()).hasSize(1);
    assertThat(lesson.judged().get(0).washes()).hasSize(2);
    assertThat(LessonFile.read(Source.of("again.json", LessonFile.write(lesson))).judged())
        .isEqualTo(lesson.judged());
    LessonPlace south = new LessonPlace(Optional.empty(), true);
    assertThat(south.of(lesson).judged().get(0).washes().get(0).date()).hasToString("2026-11-30");
  }

  @ParameterizedTest
  @CsvSource({
    "wait, 2026-05-30, 2026-07-20, 3, with 0 miticides",
    "t, 2026-06-02, 2026-07-20, 3, 'a wash up to 2026-06-01'",
    "t, 2026-04-02, 2026-05-20, 3, 'and one after it'",
    "t, 2026-05-30, 2026-05-30, 3, washes by rising days",
    "t, 2026-05-30, 2026-07-20, 301, 301 mites in 300 bees",
    "t, 2026-05-30, 2027-07-20, 3, about 2027-07-20",
    "other, 2026-05-30, 2026-07-20, 3, a plan of the settings"
  })
  void aHiveThatCannotBeJudgedIsRefused(
      String plan, String before, String after, int mites, String why) {
    List<String> found = faults(judged(plan, wash(before, 12) + ", " + wash(after, mites)));
    assertThat(found).hasSize(1);
    assertThat(found.toString()).contains("judged", why);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "\"a-lesson\" | \"A lesson\" | small letters, digits and single hyphens",
        "\"number\": 1 | \"number\": 0 | a whole number, 1 to 99",
        "\"infestation\": 1 | \"strength\": 1 | give the colony an \"infestation\"",
        "\"plan\": \"wait\", \"show\": \"mites\", \"days\" | \"plan\": \"wiat\", \"show\":"
            + " \"mites\", \"days\" | did you mean \"wait\"?",
        "\"2026-07-01\"] | \"2027-07-01\"] | 2026-03-01 to 2026-09-02",
        "\"2026-07-01\"] | \"2026-04-01\"] | days that rise",
        "\"on\": \"2026-05-01\" | \"on\": \"2025-05-01\" | 2026-03-01 to 2026-09-02",
        "\"show\": [\"mites\" | \"show\": [\"mite\" | did you mean \"mites\"?",
        "{\"name\": \"wait\"} | {\"name\": \"wait\"}, {\"name\": \"other\"} | one quantity in each"
            + " chart",
        "\"kind\": \"draw\" | \"kind\": \"guess\" | choose, draw, washes",
        "\"minutes\": 5 | \"minutes\": 0 | 1 to 120",
        "\"result\": \"winter-loss\" | \"result\": \"winter-los\" | did you mean",
        "\"plan\": \"wait\", \"result\" | \"plan\": \"wiat\", \"result\" | did you mean",
        "\"number\": 0 | \"number\": 0, \"plan\": \"wait\" | alone",
        "\"result\": \"winter-loss\" | \"number\": 1 | alone",
        "\"question\": | \"records\": [[\"a\", \"b\"], [\"a\", \"b\", \"c\"]],"
            + " \"question\": | as many cells in each row",
        "\"top\": 5000 | \"top\": 0 | 0.001 to 1000000",
        "\"reveal\": \"r\", | | the field \"reveal\" is missing",
        "\"teacher\" | \"teachers\" | did you mean \"teacher\"?",
      })
  void oneMessageSaysWhatIsAllowed(String from, String to, String message) {
    String text = LESSON.replace(from, to == null ? "" : to);
    assertThat(text).isNotEqualTo(LESSON);
    assertThat(faults(text)).singleElement().asString().contains(message);
  }

  @Test
  void oneAnswerIsRight() {
    String two =
        "{\"kind\": \"choose\", \"choices\": [{\"text\": \"a\", \"right\": true, \"because\":"
            + " \"x\"}, {\"text\": \"b\", \"right\": true, \"because\": \"y\"}]}";
    String text = LESSON.replaceAll("\"task\": \\{[^}]*}", "\"task\": " + two);
    assertThat(faults(text)).singleElement().asString().contains("exactly one right answer");
    assertThat(faults(text.replaceFirst("\"right\": true, ", ""))).isEmpty();
  }

  @Test
  void plansHaveNamesOfTheirOwnAcrossSettings() {
    String setting =
        LESSON.substring(LESSON.indexOf("    {\n"), LESSON.indexOf("  ],\n  \"task\""));
    String text = LESSON.replace(setting, setting.stripTrailing() + "," + setting);
    assertThat(faults(text)).singleElement().asString().contains("another name for each plan");
  }

  /** Whatever is done to the bytes of a lesson, it is read or refused; nothing else comes. */
  @Test
  void changedLettersAreReadOrRefused() {
    SplittableRandom random = new SplittableRandom(20_260_301);
    int refused = 0;
    for (int i = 0; i < 400; i++) {
      StringBuilder text = new StringBuilder(LESSON);
      for (int k = random.nextInt(3); k >= 0; k--) {
        text.setCharAt(random.nextInt(text.length()), (char) (32 + random.nextInt(95)));
      }
      refused += faults(text.toString()).isEmpty() ? 0 : 1;
    }
    assertThat(refused).isBetween(200, 399);
  }

  private static List<String> faults(String text) {
    try {
      LessonFile.read(Source.of("lesson.json", text));
      return List.of();
    } catch (BadInput bad) {
      return bad.faults().stream().map(Fault::text).toList();
    }
  }
}
