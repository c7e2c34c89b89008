package broodtide.fit;

import broodtide.engine.Scenario;
import broodtide.engine.StandardColony;
import broodtide.mite.Immigration;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The days of a run on which what is believed of a colony begins anew: each 1 March, 1 September
 * south of the equator, a new season with a growth and a reinvasion of its own; the weeks of late
 * reinvasion; and the day of the last wash, from which on growth is that to come.
 *
 * @param starts first days of the seasons after the first, rising; the first is that of the start
 * @param seen number of the season of the last wash, from 0
 * @param stretches the run cut at all these days; before the first the first season holds, neither
 *     late nor ahead
 */
record BeeYears(List<LocalDate> starts, int seen, List<Stretch> stretches) {
  private static final MonthDay NORTH = MonthDay.of(3, 1);
  private static final MonthDay SOUTH = MonthDay.of(9, 1);

  /**
   * A stretch of the run in which nothing begins anew.
   *
   * @param from its first day
   * @param season number of its season, from 0
   * @param late whether reinvasion is that of the late season
   * @param ahead whether the last wash lies behind it
   */
  record Stretch(LocalDate from, int season, boolean late, boolean ahead) {}

  /**
   * The years of a run.
   *
   * @param run the days and the place
   * @param lastWash day of the last wash; the first day of the run where there is none
   */
  static BeeYears of(Scenario run, LocalDate lastWash) {
    boolean southern = run.model().climate().southern();
    LocalDate start = run.start();
    LocalDate end = start.plusDays(run.days());
    List<LocalDate> starts = starts(southern, start, end);
    YearSpan late = southern ? Immigration.LATE.southern() : Immigration.LATE;
    LocalDate lead = start.minusDays(StandardColony.LEAD);
    SortedSet<LocalDate> days = new TreeSet<>(starts);
    days.add(lead);
    days.add(lastWash);
    for (int year = lead.getYear(); year <= end.getYear(); year++) {
      days.add(late.from().atYear(year));
      days.add(late.to().atYear(year).plusDays(1));
    }
    List<Stretch> stretches = new ArrayList<>();
    for (LocalDate day : days.tailSet(lead).headSet(end)) {
      int season = season(starts, day);
      stretches.add(new Stretch(day, season, late.holds(day), !day.isBefore(lastWash)));
    }
    return new BeeYears(starts, season(starts, lastWash), List.copyOf(stretches));
  }

  private static List<LocalDate> starts(boolean southern, LocalDate start, LocalDate end) {
    List<LocalDate> starts = new ArrayList<>();
    for (int year = start.getYear(); year <= end.getYear(); year++) {
      LocalDate day = (southern ? SOUTH : NORTH).atYear(year);
      if (day.isAfter(start) && day.isBefore(end)) {
        starts.add(day);
      }
    }
    return List.copyOf(starts);
  }

  private static int season(List<LocalDate> starts, LocalDate day) {
    return Math.toIntExact(starts.stream().filter(s -> !s.isAfter(day)).count());
  }

  /** The calendar year in which the season of a day begins. */
  static int year(boolean southern, LocalDate day) {
    boolean begun = !MonthDay.from(day).isBefore(southern ? SOUTH : NORTH);
    return begun ? day.getYear() : day.getYear() - 1;
  }

  /** Whether late weeks of a season lie between two days. */
  boolean late(int season, LocalDate from, LocalDate to) {
    for (int i = 0; i < stretches.size(); i++) {
      Stretch s = stretches.get(i);
      boolean ended = i + 1 < stretches.size() && !stretches.get(i + 1).from().isAfter(from);
      if (s.season() == season && s.late() && s.from().isBefore(to) && !ended) {
        return true;
      }
    }
    return false;
  }

  /** Seasons of the run, 1 or more. */
  int seasons() {
    return starts.size() + 1;
  }
}
