package broodtide.decision;

import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Rules as people write them: {@code never}; {@code 2 with formic-slow}; {@code threshold with
 * thymol wait 60}; {@code on 2026-08-05 with thymol and on 2026-12-20 with oxalic-dribble}.
 */
public final class RuleText {
  private static final String ALLOWED =
      "\"never\", \"N with CONTROL\" (N mites per 100 bees), \"threshold with CONTROL\""
          + " or \"on DATE with CONTROL and on DATE with CONTROL ...\". The first two may end"
          + " in \"wait DAYS\"";
  private static final Pattern OVER =
      Pattern.compile("(threshold|\\d+(?:\\.\\d+)?) with (\\S+)(?: wait (\\d{1,3}))?");
  private static final Pattern ON = Pattern.compile("on (\\d{4}-\\d{2}-\\d{2}) with (\\S+)");

  private RuleText() {}

  /**
   * Reads a rule.
   *
   * @param text words as in {@code 2 with formic-slow}
   * @return the rule
   * @throws OutOfRange when it is none
   * @throws broodtide.forms.BadInput when there is no such control
   */
  public static Rule read(String text) {
    String plain = plain(text);
    if (plain.equals("never")) {
      return new Rule.Never(plain);
    }
    if (plain.startsWith("limit with ")) {
      throw new OutOfRange(
          "--rule", '"' + text + '"', "\"threshold" + plain.substring("limit".length()) + '"');
    }
    Matcher over = OVER.matcher(plain);
    if (over.matches()) {
      ControlTemplate control = Catalog.control(over.group(2));
      String wait = over.group(3);
      return new Rule.Threshold(
          plain,
          over.group(1).equals("threshold")
              ? OptionalDouble.empty()
              : OptionalDouble.of(Double.parseDouble(over.group(1))),
          control,
          wait == null ? Rule.usualWait(control) : Integer.parseInt(wait));
    }
    return new Rule.Calendar(plain, placed("--rule", text, ALLOWED));
  }

  /**
   * Reads treatments by the calendar.
   *
   * @param option the option that a refusal names
   * @param text words as in {@code on 2026-08-05 with thymol and on 2026-12-20 with thymol}
   * @param allowed what the option takes
   */
  static List<Rule.Placed> placed(String option, String text, String allowed) {
    List<Rule.Placed> placed = new ArrayList<>();
    for (String part : plain(text).split(" and ", -1)) {
      Matcher on = ON.matcher(part);
      if (!on.matches()) {
        throw new OutOfRange(option, '"' + text + '"', allowed);
      }
      LocalDate day = day(on.group(1));
      if (day == null) {
        throw new OutOfRange(
            option,
            '"' + text + '"',
            "a day of the calendar as year-month-day, such as 2026-08-05; "
                + on.group(1)
                + " is none");
      }
      placed.add(new Rule.Placed(Catalog.control(on.group(2)), day));
    }
    return placed;
  }

  static String plain(String text) {
    return text.strip().replaceAll("\\s+", " ");
  }

  private static @Nullable LocalDate day(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      return null;
    }
  }
}
