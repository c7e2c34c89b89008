package broodtide.classroom;

import broodtide.catalog.Catalog;
import broodtide.control.Control;
import broodtide.web.Query;
import broodtide.web.Refused;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * All that can be set in the explorer. It stands in the address as a whole, so an address can be
 * shared, printed and opened again.
 *
 * @param climate name of the climate
 * @param south whether the place lies south of the equator
 * @param mites mites per 100 bees on the first day
 * @param brood factor on the queen's laying
 * @param arrivals mites a day from other hives
 * @param scenarios what is done, in scenarios A to D; the first is there always
 */
record ExplorerState(
    String climate,
    boolean south,
    double mites,
    double brood,
    double arrivals,
    List<List<Action>> scenarios) {
  /** Letters of the scenarios, as they stand in addresses. */
  static final List<String> LETTERS = List.of("a", "b", "c", "d");

  static final Dial MITES =
      new Dial("mites", "Mites on the first day", "mites per 100 bees", 0, 10, 0.1, 0.5);
  static final Dial BROOD =
      new Dial("brood", "Laying factor", "times an average queen's", 0.5, 1.5, 0.05, 1);
  static final Dial ARRIVALS =
      new Dial("arrivals", "Reinvasion", "mites a day in late summer and autumn", 0, 40, 0.5, 0);

  /** First day in the north: an invented year from March to the March after. */
  private static final LocalDate FIRST_DAY = LocalDate.of(2026, 3, 1);

  private static final LocalDate LAST_DAY = LocalDate.of(2027, 3, 31);
  private static final int HALF_A_YEAR = 6;
  private static final int MOST_ACTIONS = 6;
  private static final String NO = "no";
  private static final List<String> NAMES =
      List.of(
          "climate", "south", "mites", "brood", "arrivals", "a", "b", "c", "d", "add", "on", "to");

  /**
   * Something done.
   *
   * @param control name of the control in the library
   * @param on the day it begins
   */
  record Action(String control, LocalDate on) {
    /** The control on its days. */
    Control placed() {
      return Catalog.control(control).at(on);
    }
  }

  /** Copies the lists. */
  ExplorerState {
    scenarios = scenarios.stream().map(List::copyOf).toList();
  }

  /** First day of every colony. */
  static LocalDate first(boolean south) {
    return south ? FIRST_DAY.plusMonths(HALF_A_YEAR) : FIRST_DAY;
  }

  /** Last day of every colony. */
  static LocalDate last(boolean south) {
    return south ? LAST_DAY.plusMonths(HALF_A_YEAR) : LAST_DAY;
  }

  /** The day on which an action is put at first. */
  static LocalDate usual(String control, boolean south) {
    LocalDate day =
        control.startsWith("drone-comb") ? LocalDate.of(2026, 4, 25) : LocalDate.of(2026, 8, 15);
    return south ? day.plusMonths(HALF_A_YEAR) : day;
  }

  /**
   * Reads a state from an address. {@code add}, {@code on} and {@code to} are what the form without
   * a script sends: one more action in a scenario.
   *
   * @param raw what stands behind the question mark
   * @param places climates, and where the page begins
   * @throws Refused when a value is not allowed
   */
  static ExplorerState read(@Nullable String raw, Places places) {
    Query in = Query.of(raw, NAMES);
    boolean south = in.word("south", places.south() ? "yes" : NO, List.of("yes", NO)).equals("yes");
    List<List<Action>> scenarios = new ArrayList<>();
    for (String letter : LETTERS) {
      Optional<String> text = in.text(letter);
      if (text.isPresent() || scenarios.isEmpty()) {
        scenarios.add(actions(letter, text.orElse(""), south));
      }
    }
    String add = in.word("add", "", choices());
    if (!add.isEmpty()) {
      LocalDate on = in.date("on", usual(add, south), first(south), last(south));
      int to = LETTERS.indexOf(in.word("to", "a", LETTERS));
      if (to >= scenarios.size()) {
        scenarios.add(List.of());
      }
      int at = Math.min(to, scenarios.size() - 1);
      List<Action> more = new ArrayList<>(scenarios.get(at));
      more.add(new Action(add, on));
      scenarios.set(at, checked(LETTERS.get(at), more));
    }
    return new ExplorerState(
        in.word("climate", places.first(), places.names()),
        south,
        MITES.in(in),
        BROOD.in(in),
        ARRIVALS.in(in),
        scenarios);
  }

  private static List<String> choices() {
    List<String> out = new ArrayList<>(Catalog.CONTROLS.names());
    out.add("");
    return out;
  }

  private static List<Action> actions(String letter, String text, boolean south) {
    List<Action> out = new ArrayList<>();
    for (String part : text.isEmpty() ? List.<String>of() : List.of(text.split(",", -1))) {
      String[] halves = part.split("@", 2);
      if (halves.length < 2 || !Catalog.CONTROLS.names().contains(halves[0])) {
        throw wrong(letter, part, "control@date, such as thymol@" + usual("thymol", south));
      }
      out.add(new Action(halves[0], day(letter, halves[1], south)));
    }
    return checked(letter, out);
  }

  private static List<Action> checked(String letter, List<Action> actions) {
    if (actions.size() > MOST_ACTIONS) {
      throw wrong(letter, actions.size() + " actions", "at most " + MOST_ACTIONS);
    }
    return actions;
  }

  private static LocalDate day(String letter, String text, boolean south) {
    try {
      LocalDate day = text.length() == 10 ? LocalDate.parse(text) : LocalDate.MIN;
      if (!day.isBefore(first(south)) && !day.isAfter(last(south))) {
        return day;
      }
    } catch (DateTimeException e) {
      throw wrong(letter, text, "a date from " + first(south) + " to " + last(south));
    }
    throw wrong(letter, text, "a date from " + first(south) + " to " + last(south));
  }

  private static Refused wrong(String letter, String given, String allowed) {
    return Refused.unwanted(letter, given, allowed);
  }

  /** {@return the state as an address says it, without a question mark} */
  String query() {
    StringBuilder out =
        new StringBuilder("climate=" + encoded(climate) + "&south=" + (south ? "yes" : NO));
    out.append("&mites=").append(SeasonJson.number(mites).toPlainString());
    out.append("&brood=").append(SeasonJson.number(brood).toPlainString());
    out.append("&arrivals=").append(SeasonJson.number(arrivals).toPlainString());
    for (int i = 0; i < scenarios.size(); i++) {
      out.append('&').append(LETTERS.get(i)).append('=').append(encoded(text(i)));
    }
    return out.toString();
  }

  /** What is done in a scenario, as an address says it. */
  String text(int scenario) {
    return scenarios.get(scenario).stream()
        .map(a -> a.control() + "@" + a.on())
        .collect(Collectors.joining(","));
  }

  /** The state without one action. */
  ExplorerState without(int scenario, int action) {
    List<List<Action>> all = new ArrayList<>(scenarios);
    List<Action> fewer = new ArrayList<>(all.get(scenario));
    fewer.remove(action);
    all.set(scenario, fewer);
    return new ExplorerState(climate, south, mites, brood, arrivals, all);
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
