package broodtide.cli;

import broodtide.lesson.Lesson;
import broodtide.lesson.LessonPlace;
import broodtide.lesson.LessonRun;
import broodtide.words.Digits;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.OptionalDouble;

/** Says whether the figures of a lesson show what its words claim. */
final class LessonCheck {
  private final CommandContext desk;
  private final LessonPlace place;

  /**
   * @param desk where it speaks
   * @param place where the lessons are taught
   */
  LessonCheck(CommandContext desk, LessonPlace place) {
    this.desk = desk;
    this.place = place;
  }

  /**
   * Checks lessons.
   *
   * @return the exit code, 0 when every claim holds and 2 when one does not
   */
  int of(List<Lesson> lessons, boolean json) {
    ArrayNode out = new ObjectMapper().createArrayNode();
    int broken = 0;
    for (Lesson each : lessons) {
      Lesson lesson = place.of(each);
      LessonRun run = LessonRun.of(lesson);
      ObjectNode node = out.addObject().put("lesson", lesson.name());
      ArrayNode claims = node.putArray("claims");
      say(json, lesson.name() + ": " + lesson.title());
      for (Lesson.Claim claim : lesson.claims()) {
        boolean holds = run.holds(claim);
        broken += holds ? 0 : 1;
        claims.addObject().put("say", claim.say()).put("holds", holds);
        say(
            json,
            (holds ? "shown: " : "NOT SHOWN: ")
                + claim.say()
                + " ("
                + number(run.value(claim.larger()))
                + " against "
                + number(run.value(claim.smaller()))
                + ", at least "
                + Digits.plain(claim.times())
                + " times)");
      }
    }
    if (json) {
      desk.out().println(out);
    } else if (broken > 0) {
      say(false, "Change the claim, or the colony, days and controls that it is about.");
    }
    desk.deliver();
    return broken > 0 ? Main.BAD_INPUT : Main.OK;
  }

  private void say(boolean json, String text) {
    if (!json) {
      desk.out().println(desk.terminal().wrap(text));
    }
  }

  private static String number(OptionalDouble value) {
    return value.isPresent() ? Digits.two(value.getAsDouble()) : "not shown for this climate";
  }
}
