package broodtide.web;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What stands behind the question mark of an address: named values, checked as files are. */
public final class Query {
  private static final int MOST = 20;

  private final Map<String, String> values;

  private Query(Map<String, String> values) {
    this.values = values;
  }

  /**
   * Reads the values.
   *
   * @param raw what stands behind the question mark; null for nothing
   * @param known names that may be given, each at most once
   * @throws Refused when a name is unknown or given twice, or the text is not well formed
   */
  public static Query of(@Nullable String raw, Collection<String> known) {
    Map<String, String> values = new LinkedHashMap<>();
    if (raw != null && !raw.isEmpty()) {
      String[] pairs = raw.split("&", -1);
      if (pairs.length > MOST) {
        throw Refused.bad("the address has " + pairs.length + " values; expected " + MOST);
      }
      for (String pair : pairs) {
        int equals = pair.indexOf('=');
        if (equals < 1) {
          throw Refused.bad(
              "the address has " + Refused.quoted(pair) + "; expected name=value&name=value");
        }
        String name = decoded(pair.substring(0, equals));
        if (!known.contains(name)) {
          throw Refused.bad(
              "there is no value named "
                  + Refused.quoted(name)
                  + "; expected "
                  + (known.isEmpty() ? "none" : String.join(", ", known)));
        }
        if (values.put(name, decoded(pair.substring(equals + 1))) != null) {
          throw Refused.bad(name + " is given twice; keep one");
        }
      }
    }
    return new Query(values);
  }

  private static String decoded(String text) {
    try {
      return URLDecoder.decode(text, StandardCharsets.UTF_8);
    } catch (IllegalArgumentException e) {
      throw Refused.bad(Refused.quoted(text) + " is not well formed; % needs two digits after it");
    }
  }

  /**
   * {@return a number within a range}
   *
   * @param name its name
   * @param fallback its value when it is not given
   * @param least lower end
   * @param most upper end
   * @param range the range in words
   * @throws Refused when it is no number or lies outside
   */
  public double number(String name, double fallback, double least, double most, String range) {
    String text = values.get(name);
    if (text == null) {
      return fallback;
    }
    if (!text.matches("-?[0-9]{1,9}(\\.[0-9]{1,9})?")) {
      throw outside(name, text, "a number, " + range);
    }
    double value = Double.parseDouble(text);
    if (value < least || value > most) {
      throw outside(name, text, range);
    }
    return value;
  }

  /** A whole number. */
  public long whole(String name, long fallback, long least, long most) {
    String text = values.get(name);
    if (text == null) {
      return fallback;
    }
    boolean digits = text.matches("[0-9]{1,15}");
    if (!digits || Long.parseLong(text) < least || Long.parseLong(text) > most) {
      throw outside(name, text, "a whole number, " + least + " to " + most);
    }
    return Long.parseLong(text);
  }

  /** A text as it stands; empty when it is not given. */
  public Optional<String> text(String name) {
    return Optional.ofNullable(values.get(name));
  }

  /** One of a few words. */
  public String word(String name, String fallback, List<String> allowed) {
    String text = values.getOrDefault(name, fallback);
    if (!allowed.contains(text)) {
      throw outside(name, text, "one of " + String.join(", ", allowed));
    }
    return text;
  }

  /** A date within a span. */
  public LocalDate date(String name, LocalDate fallback, LocalDate first, LocalDate last) {
    String text = values.get(name);
    if (text == null) {
      return fallback;
    }
    String range = "a date like " + fallback + ", from " + first + " to " + last;
    try {
      LocalDate day = text.length() == 10 ? LocalDate.parse(text) : LocalDate.MIN;
      if (!day.isBefore(first) && !day.isAfter(last)) {
        return day;
      }
    } catch (DateTimeException e) {
      throw outside(name, text, range);
    }
    throw outside(name, text, range);
  }

  private static Refused outside(String name, String text, String allowed) {
    return Refused.bad(name + " is " + Refused.quoted(text) + "; expected " + allowed);
  }
}
