package broodtide.lesson;

import broodtide.engine.DailyEngine;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SpringLow;
import broodtide.engine.Survival;
import broodtide.engine.Trajectory;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * A lesson as the engine plays it: the worth of its measures, and whether its claims hold.
 * Immutable once made, so threads may share it.
 */
public final class LessonRun {
  /** What one colony came to under one plan. */
  private record Played(Trajectory season, Map<LessonResult, Double> results) {}

  private final Lesson lesson;
  private final Map<String, Played> played = new LinkedHashMap<>();

  private LessonRun(Lesson lesson) {
    this.lesson = lesson;
    lesson.lines().forEach(line -> played.put(line.name(), play(line)));
  }

  /**
   * {@return a lesson with its seasons played}
   *
   * @param lesson the lesson
   * @throws broodtide.measure.Unworkable when no colony lives in one of its climates
   */
  public static LessonRun of(Lesson lesson) {
    return new LessonRun(lesson);
  }

  /**
   * {@return what a measure is worth; empty for winter results where the climate has no winter
   * whose losses can be told}
   *
   * @param measure a measure of this lesson
   */
  public OptionalDouble value(Lesson.Measure measure) {
    if (measure instanceof Lesson.Given given) {
      return OptionalDouble.of(given.number());
    }
    if (measure instanceof Lesson.Result result) {
      Double found = of(result.plan()).results().get(result.result());
      return found == null ? OptionalDouble.empty() : OptionalDouble.of(found);
    }
    Lesson.OnDay day = (Lesson.OnDay) measure;
    Trajectory season = of(day.plan()).season();
    double shown = season.at(day.show(), day.on());
    if (day.of().isEmpty()) {
      return OptionalDouble.of(shown);
    }
    double whole = season.at(day.of().get(), day.on());
    return OptionalDouble.of(whole > 0 ? shown / whole : 0);
  }

  /**
   * {@return whether the engine shows what a claim says}
   *
   * @param claim a claim of this lesson
   */
  public boolean holds(Lesson.Claim claim) {
    OptionalDouble larger = value(claim.larger());
    OptionalDouble smaller = value(claim.smaller());
    return larger.isPresent()
        && smaller.isPresent()
        && larger.getAsDouble() >= claim.times() * smaller.getAsDouble();
  }

  /** {@return the claims that the figures do not carry, in the order of the file} */
  public List<Lesson.Claim> broken() {
    return lesson.claims().stream().filter(claim -> !holds(claim)).toList();
  }

  private Played of(String plan) {
    Played found = played.get(plan);
    if (found == null) {
      throw new IllegalArgumentException("no plan " + plan);
    }
    return found;
  }

  private static Played play(Lesson.Line line) {
    Scenario asked = line.scenario();
    YearSpan raising = asked.model().climate().winterBees();
    LocalDate first = asked.start();
    while (!raising.holds(first)) {
      first = first.plusDays(1);
    }
    LocalDate last = first;
    while (raising.holds(last.plusDays(1))) {
      last = last.plusDays(1);
    }
    LocalDate low = SpringLow.after(asked.model(), last).day();
    int days = Math.toIntExact(low.toEpochDay() - asked.start().toEpochDay());
    Scenario whole =
        new Scenario(asked.model(), asked.plan(), asked.start(), Math.max(days, asked.days()));
    Trajectory season = DailyEngine.run(whole, line.setting().member());
    Map<LessonResult, Double> results = new LinkedHashMap<>();
    if (Survival.hasWinter(asked.model().climate())) {
      results.put(LessonResult.WINTER_LOSS, loss(season, Survival.in(asked.model()), low));
      results.put(LessonResult.SPRING_BEES, season.at(Quantity.ADULTS, low));
    }
    results.put(LessonResult.INFESTED_WINTER_BROOD, brood(season, first, last));
    return new Played(season, results);
  }

  private static double loss(Trajectory season, Survival survival, LocalDate low) {
    LocalDate start = season.start();
    double adults = season.at(Quantity.ADULTS, start);
    double least = adults;
    for (LocalDate d = start; !d.isAfter(low); d = d.plusDays(1)) {
      least = Math.min(least, season.at(Quantity.ADULTS, d));
    }
    return 1 - survival.alive(adults, least, start, low);
  }

  private static double brood(Trajectory season, LocalDate first, LocalDate last) {
    double sum = 0;
    int days = 0;
    for (LocalDate d = first; !d.isAfter(last); d = d.plusDays(1)) {
      double share = season.at(Quantity.INFESTED_WORKER_SHARE, d);
      sum += share;
      days += share > 0 ? 1 : 0;
    }
    return sum / Math.max(1, days);
  }
}
