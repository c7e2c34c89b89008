package broodtide.chart;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/** An invented season for trying the pictures: plausible shapes, no model behind them. */
public final class InventedSeason {
  static final LocalDate START = LocalDate.of(2026, 4, 1);
  public static final LocalDate TODAY = LocalDate.of(2026, 7, 14);
  static final LocalDate END = LocalDate.of(2027, 3, 1);

  private InventedSeason() {}

  /**
   * A plan: growth at a rate that follows the brood, and a kill over five weeks.
   *
   * @param kill share killed, 0 for none
   */
  static Line plan(String name, LocalDate treated, double kill, boolean bands) {
    List<Estimate> days = new ArrayList<>();
    double log = Math.log(0.45);
    for (LocalDate d = START; !d.isAfter(END); d = d.plusDays(1)) {
      double season = Math.cos((d.getDayOfYear() - 195) / 365.0 * 2 * Math.PI);
      log += d.isBefore(LocalDate.of(2026, 11, 1)) ? 0.008 + 0.013 * season : -0.002;
      long since = ChronoUnit.DAYS.between(treated, d);
      if (kill > 0 && since >= 0 && since < 35) {
        log += Math.log(1 - kill) / 35;
      }
      double ahead = Math.max(0, ChronoUnit.DAYS.between(TODAY, d));
      double past = Math.max(0, ChronoUnit.DAYS.between(d, TODAY));
      double sd = 0.16 + 0.0021 * ahead + 0.0016 * past;
      days.add(bands ? banded(d, log, sd) : Estimate.of(d, Math.exp(log)));
    }
    Estimate end = days.get(days.size() - 1);
    return new Line(name, Numerals.two(end.median()) + " in March", days);
  }

  private static Estimate banded(LocalDate d, double log, double sd) {
    return Estimate.of(
        d,
        Math.exp(log - 1.645 * sd),
        Math.exp(log - 0.674 * sd),
        Math.exp(log),
        Math.exp(log + 0.674 * sd),
        Math.exp(log + 1.645 * sd));
  }

  static List<Line> twoPlans() {
    return List.of(
        plan("wait", START, 0, true),
        plan("thymol on 10 August", LocalDate.of(2026, 8, 10), 0.88, true));
  }

  static List<Line> sixPlans() {
    return List.of(
        plan("wait", START, 0, true),
        plan("thymol, 10 August", LocalDate.of(2026, 8, 10), 0.88, true),
        plan("formic acid, 20 July", LocalDate.of(2026, 7, 20), 0.7, true),
        plan("caging and oxalic acid", LocalDate.of(2026, 7, 25), 0.85, true),
        plan("amitraz, 1 September", LocalDate.of(2026, 9, 1), 0.87, true),
        plan("drone comb only", LocalDate.of(2026, 6, 1), 0.4, true));
  }

  static SeasonChart sevenPlans() {
    List<Line> seven = new ArrayList<>(sixPlans());
    seven.add(plan("oxalic acid, 3 November", LocalDate.of(2026, 11, 3), 0.9, false));
    return SeasonChart.of(new Heading("Seven plans", "Invented."), "Mites per 100 bees", seven);
  }

  static List<WashPoint> washes() {
    return List.of(
        wash(LocalDate.of(2026, 4, 20), 0.31, 0.04, 1.1, "1 mite in 318 bees"),
        wash(LocalDate.of(2026, 5, 18), 0.98, 0.27, 2.5, "3 mites in 305 bees"),
        wash(LocalDate.of(2026, 6, 15), 1.55, 0.57, 3.3, "5 mites in 322 bees"),
        wash(LocalDate.of(2026, 7, 13), 2.84, 1.42, 5.0, "9 mites in 317 bees"));
  }

  private static WashPoint wash(LocalDate d, double v, double low, double high, String note) {
    return new WashPoint(d, v, new Range(low, high), note);
  }

  static ThresholdSteps threshold() {
    return new ThresholdSteps(
        "threshold",
        List.of(
            new ThresholdSteps.Level(LocalDate.of(2026, 4, 1), LocalDate.of(2026, 6, 30), 1),
            new ThresholdSteps.Level(LocalDate.of(2026, 7, 1), LocalDate.of(2026, 9, 14), 4.7),
            new ThresholdSteps.Level(LocalDate.of(2026, 9, 15), LocalDate.of(2027, 3, 31), 1)));
  }

  static Almanac almanac() {
    return Almanac.BLANK
        .with(new Span("honey supers on", LocalDate.of(2026, 5, 10), LocalDate.of(2026, 8, 5)))
        .with(new Span("winter bees raised", LocalDate.of(2026, 8, 20), LocalDate.of(2026, 10, 5)))
        .with(new Marker("thymol", LocalDate.of(2026, 8, 10)))
        .today(TODAY);
  }

  static SeasonChart forecast() {
    return SeasonChart.of(
            new Heading(
                "Waiting puts this colony over the threshold by late August in about 3 in 4"
                    + " seasons",
                "Colony 4, invented data. Middle line with 50 and 90 % bands; points are washes."),
            "Mites per 100 adult bees",
            twoPlans())
        .washes(washes())
        .threshold(threshold())
        .almanac(almanac());
  }

  static SeasonChart crowded() {
    Almanac busy =
        almanac()
            .with(new Marker("formic acid", LocalDate.of(2026, 7, 20)))
            .with(new Marker("caging", LocalDate.of(2026, 7, 25)))
            .with(new Marker("amitraz", LocalDate.of(2026, 9, 1)))
            .with(new Span("drone comb in", LocalDate.of(2026, 4, 25), LocalDate.of(2026, 6, 20)));
    return SeasonChart.of(
            new Heading(
                "Five of six plans keep the winter bees below the threshold",
                "Colony 4, invented data."),
            "Mites per 100 adult bees",
            sixPlans())
        .washes(washes())
        .threshold(threshold())
        .almanac(busy);
  }

  static ColonyChart colony() {
    Panel bees =
        Panel.of(
            "Bees and capped cells",
            List.of(
                curve("adult bees", 9000, 27000, 175, 75),
                curve("capped brood", 500, 21000, 150, 55)));
    Panel mites =
        Panel.of(
            "Mites",
            List.of(
                curve("mites on bees", 40, 900, 262, 60),
                curve("mites in brood", 5, 2400, 240, 45)));
    return ColonyChart.of(
        new Heading(
            "In summer most mites sit in the brood, out of reach of sprays and dribbles",
            "Colony 4, invented data, if nothing is done."),
        bees,
        mites,
        almanac());
  }

  private static Line curve(String name, double low, double rise, int peak, double width) {
    List<Estimate> days = new ArrayList<>();
    for (LocalDate d = START; !d.isAfter(END); d = d.plusDays(1)) {
      double z = (ChronoUnit.DAYS.between(LocalDate.of(2026, 1, 1), d) - peak) / width;
      double v = low + rise * Math.exp(-0.5 * z * z);
      days.add(Estimate.of(d, 0.7 * v, 0.88 * v, v, 1.12 * v, 1.4 * v));
    }
    return new Line(name, "", days);
  }

  static WindowMap windows() {
    List<LocalDate> starts = new ArrayList<>();
    for (LocalDate d = LocalDate.of(2026, 6, 1);
        d.isBefore(LocalDate.of(2026, 10, 15));
        d = d.plusDays(7)) {
      starts.add(d);
    }
    List<WindowMap.Row> rows =
        List.of(
            row("thymol", starts, 70, 0.9, LocalDate.of(2026, 9, 20)),
            row("formic acid strips", starts, 60, 1.4, LocalDate.of(2026, 10, 1)),
            row("amitraz strips", starts, 80, 1.1, END),
            row("caging and oxalic acid", starts, 55, 1.2, LocalDate.of(2026, 9, 1)));
    return WindowMap.of(
        new Heading(
            "Mid-August is the best time to begin, and a week either way hardly matters",
            "Colony 4, invented data. Each cell: a control begun that day, all else equal."),
        "Mites per 100 adult bees on 1 October, middle value",
        true,
        starts,
        rows);
  }

  private static WindowMap.Row row(
      String name, List<LocalDate> starts, int best, double least, LocalDate end) {
    List<WindowMap.Cell> cells = new ArrayList<>();
    for (int i = 0; i < starts.size(); i++) {
      LocalDate d = starts.get(i);
      double off = (i * 7 - best) / 40.0;
      if (d.isBefore(LocalDate.of(2026, 8, 5))) {
        cells.add(new WindowMap.Masked('S', "honey supers on"));
      } else if (!d.isBefore(end)) {
        cells.add(new WindowMap.Masked('T', "usually too cool for this control"));
      } else {
        double value = least + 1.9 * off * off;
        cells.add(new WindowMap.Outcome(value, false, value <= 1.05));
      }
    }
    return new WindowMap.Row(name, cells);
  }
}
