package broodtide.page;

import broodtide.assessment.Caution;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.ControlCautions;
import broodtide.assessment.NextCount;
import broodtide.catalog.HiveVisit;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.wash.Wash;
import broodtide.words.Plain;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The next day to wash and each day on which a plan asks for hands, as a file for calendars:
 * iCalendar, RFC 5545. Days are whole days without a time, so they mean the same everywhere.
 */
final class Reminders {
  private static final DateTimeFormatter DAY = DateTimeFormatter.BASIC_ISO_DATE;
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT);

  /** Bytes of a line, its end left out; longer ones go on in the next. */
  private static final int LINE = 75;

  private final StringBuilder out = new StringBuilder();
  private final String stamp;

  private Reminders(Instant now) {
    stamp = STAMP.format(now.atOffset(ZoneOffset.UTC));
  }

  /**
   * {@return the text of the file}
   *
   * @param cases the hives
   * @param plan the plan whose days are wanted; empty for none
   * @param now the moment at which it is made
   */
  static String of(List<ColonyCase> cases, Optional<Plan> plan, Instant now) {
    Reminders file = new Reminders(now);
    file.line("BEGIN:VCALENDAR");
    file.line("VERSION:2.0");
    file.line("PRODID:-//Broodtide//hives//EN");
    file.line("CALSCALE:GREGORIAN");
    washes(cases)
        .forEach(
            (day, hives) ->
                file.event(
                    day,
                    "Wash: " + String.join(", ", hives),
                    "Half a cup of bees of each hive. " + Caution.WASH + " " + Caution.ALCOHOL));
    for (Control control : plan.map(Plan::controls).orElse(List.of())) {
      String words =
          Stream.of(
                  List.of("From your plan \"" + plan.orElseThrow().name() + "\"."),
                  ControlCautions.of(control),
                  List.of(Caution.ANSWER))
              .flatMap(List::stream)
              .collect(Collectors.joining(" "));
      for (HiveVisit visit : ControlCautions.visits(control)) {
        file.event(visit.day(), control.name() + ": " + visit.deed(), words);
      }
    }
    file.line("END:VCALENDAR");
    return file.out.toString();
  }

  /** The next day to wash of each hive, and what asks for it. */
  static Map<LocalDate, List<String>> washes(List<ColonyCase> cases) {
    Map<LocalDate, List<String>> days = new TreeMap<>();
    for (ColonyCase c : cases) {
      days.computeIfAbsent(next(c), d -> new ArrayList<>()).add(c.colony());
    }
    return days;
  }

  /** By the count that the sheet asks for, or else four weeks after the newest one. */
  private static LocalDate next(ColonyCase c) {
    LocalDate usual =
        c.washes().stream()
            .map(Wash::date)
            .max(Comparator.naturalOrder())
            .map(d -> d.plusDays(NextCount.APART))
            .orElse(c.now());
    LocalDate day = NextCount.of(c.washes(), c.now()).map(NextCount::by).orElse(usual);
    return day.isBefore(c.now()) ? c.now() : day;
  }

  /** What is to be washed next, in one sentence. */
  static String sentence(List<ColonyCase> cases) {
    List<String> parts = new ArrayList<>();
    washes(cases)
        .forEach((day, hives) -> parts.add(Plain.day(day) + ": " + String.join(", ", hives)));
    return "Wash next on " + String.join("; ", parts) + ".";
  }

  private void event(LocalDate day, String summary, String description) {
    String seed = day + "\n" + summary;
    line("BEGIN:VEVENT");
    line(
        "UID:"
            + UUID.nameUUIDFromBytes(seed.getBytes(StandardCharsets.UTF_8))
            + "@broodtide.local");
    line("DTSTAMP:" + stamp);
    line("DTSTART;VALUE=DATE:" + DAY.format(day));
    line("DTEND;VALUE=DATE:" + DAY.format(day.plusDays(1)));
    line("SUMMARY:" + text(summary));
    line("DESCRIPTION:" + text(description));
    line("TRANSP:TRANSPARENT");
    line("END:VEVENT");
  }

  /** Text as RFC 5545, 3.3.11 has it; other control characters are not allowed there. */
  private static String text(String words) {
    return words
        .replace("\\", "\\\\")
        .replace(";", "\\;")
        .replace(",", "\\,")
        .replaceAll("\\R", "\\\\n")
        .replaceAll("\\p{Cntrl}", " ");
  }

  /** A line, folded where it is longer than the standard allows, never within a character. */
  private void line(String text) {
    int filled = 0;
    for (int i = 0; i < text.length(); ) {
      int point = text.codePointAt(i);
      String letter = Character.toString(point);
      int bytes = letter.getBytes(StandardCharsets.UTF_8).length;
      if (filled + bytes > LINE) {
        out.append("\r\n ");
        filled = 1;
      }
      out.append(letter);
      filled += bytes;
      i += letter.length();
    }
    out.append("\r\n");
  }
}
