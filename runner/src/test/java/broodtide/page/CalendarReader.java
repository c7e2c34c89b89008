package broodtide.page;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A strict reader of iCalendar as RFC 5545 has it, as far as whole-day events need it. */
record CalendarReader(List<String[]> properties) {
  private static final Pattern LINE =
      Pattern.compile("([A-Z-]+)((?:;[A-Z-]+=[^;:,\"]+)*):(.*)", Pattern.DOTALL);

  static CalendarReader read(String text) {
    if (!text.endsWith("\r\n") || text.replace("\r\n", "").matches("(?s).*[\\r\\n].*")) {
      throw new IllegalArgumentException("lines end in CR LF");
    }
    for (String line : text.split("\r\n", -1)) {
      if (line.getBytes(StandardCharsets.UTF_8).length > 75) {
        throw new IllegalArgumentException("a line is longer than 75 bytes: " + line);
      }
    }
    List<String[]> all = new ArrayList<>();
    Deque<String> open = new ArrayDeque<>();
    for (String line : text.replace("\r\n ", "").split("\r\n")) {
      Matcher parts = LINE.matcher(line);
      if (!parts.matches()) {
        throw new IllegalArgumentException("no content line: " + line);
      }
      String name = parts.group(1);
      String value = parts.group(3);
      if (value.matches("(?s).*\\p{Cntrl}.*")) {
        throw new IllegalArgumentException("a control character in " + line);
      }
      switch (name) {
        case "BEGIN" -> open.push(value);
        case "END" -> {
          if (!open.pop().equals(value)) {
            throw new IllegalArgumentException("wrong end: " + line);
          }
        }
        case "SUMMARY", "DESCRIPTION" -> {
          if (value.replaceAll("\\\\[\\\\;,nN]", "").matches(".*[\\\\;,].*")) {
            throw new IllegalArgumentException("not escaped: " + line);
          }
          value = value.replaceAll("\\\\[nN]", "\n").replaceAll("\\\\([\\\\;,])", "$1");
        }
        case "DTSTART", "DTEND" -> {
          if (!parts.group(2).equals(";VALUE=DATE") || !value.matches("\\d{8}")) {
            throw new IllegalArgumentException("no whole day: " + line);
          }
        }
        case "DTSTAMP" -> {
          if (!value.matches("\\d{8}T\\d{6}Z")) {
            throw new IllegalArgumentException("no moment: " + line);
          }
        }
        default -> {
          // The others are names and numbers, and need no more than a content line.
        }
      }
      all.add(new String[] {name, value});
    }
    if (!open.isEmpty()) {
      throw new IllegalArgumentException("still open: " + open);
    }
    CalendarReader read = new CalendarReader(all);
    int events = (int) all.stream().filter(p -> p[1].equals("VEVENT")).count() / 2;
    for (String once : List.of("UID", "DTSTAMP", "DTSTART", "SUMMARY")) {
      if (read.of(once).size() != events) {
        throw new IllegalArgumentException("every event has one " + once);
      }
    }
    if (read.of("UID").stream().distinct().count() != events
        || !read.of("VERSION").equals(List.of("2.0"))
        || read.of("PRODID").size() != 1) {
      throw new IllegalArgumentException("version, program and different events");
    }
    return read;
  }

  /** Values of a property, in their order. */
  List<String> of(String name) {
    return properties.stream().filter(p -> p[0].equals(name)).map(p -> p[1]).toList();
  }
}
