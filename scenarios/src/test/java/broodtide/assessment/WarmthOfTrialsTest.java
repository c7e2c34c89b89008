package broodtide.assessment;

import broodtide.assessment.EfficacyFit.Setting;
import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate.Against;
import broodtide.catalog.EfficacyTrial;
import broodtide.control.MiticideCourse;
import broodtide.engine.ColonyModel;
import broodtide.pages.Check;
import broodtide.season.DailyHighs;
import java.time.LocalDate;
import java.util.List;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Thymol and formic acid at the daily highs of their trials. Hazards are fitted where it is warm;
 * what they do where it is cool follows from their response to warmth, and is held here to the
 * range in which two thirds of the trials of such places lie.
 *
 * <p>Ireland: treated on 21 August, what was left counted by oxalic acid on 11 December. Ontario:
 * 21 days in July. The Alps: August and September, followed up after 60 days by choice. Others are
 * simulated where the control is fitted, at their own highs.
 */
@Tag("outside")
class WarmthOfTrialsTest {
  private static final String SOURCE =
      "trials in the control's file; range of 16 to 84 % of the trials of such places";

  static Stream<Check> checks() {
    Predicate<EfficacyTrial> cool = in("Ireland").or(in("Ontario"));
    Predicate<EfficacyTrial> alps = in("Senicno").or(in("Bohinj"));
    return Stream.of(
        group("thymol", "warm places", EfficacyTrial::pooled, 0.69, 0.95),
        group("thymol", "cool places without the Alps", cool, 0.63, 0.86),
        group("thymol", "cool places, all", cool.or(alps), 0.21, 0.84),
        group("formic-slow", "evaporators and pads", EfficacyTrial::pooled, 0.57, 0.94),
        group("formic-strips", "strips", EfficacyTrial::pooled, 0.60, 0.92));
  }

  @ParameterizedTest
  @MethodSource("checks")
  void published(Check check) {
    check.verify();
  }

  private static Check group(
      String name, String what, Predicate<EfficacyTrial> of, double low, double high) {
    List<EfficacyTrial> trials =
        Shipped.efficacy(name).trials().stream()
            .filter(t -> t.high().isPresent())
            .filter(of)
            .toList();
    return Check.within(
        "mean efficacy of " + name + " at the daily highs of " + trials.size() + " trials, " + what,
        Math.round(100 * low) + " to " + Math.round(100 * high) + " %",
        low,
        high,
        SOURCE,
        () -> trials.stream().mapToDouble(t -> simulated(name, t)).average().orElseThrow());
  }

  private static Predicate<EfficacyTrial> in(String place) {
    return trial -> trial.source().contains(place);
  }

  private static double simulated(String name, EfficacyTrial trial) {
    MiticideCourse usual = Shipped.course(name, LocalDate.of(2001, 1, 1));
    Setting fitted = Shipped.setting(name);
    if (in("Ireland").test(trial)) {
      return at("cool-maritime", LocalDate.of(2001, 8, 21), 112, usual, trial);
    }
    if (in("Ontario").test(trial) && !trial.pooled()) {
      MiticideCourse once =
          MiticideCourse.once(usual.name(), usual.substance(), LocalDate.of(2001, 7, 5));
      return at("cold-continental", once.start(), 21, once, trial);
    }
    if (in("Senicno").or(in("Bohinj")).test(trial)) {
      return at("temperate", LocalDate.of(2001, 8, 10), 60, usual, trial);
    }
    return at(
        fitted.model().climate().name(), fitted.start(), fitted.measuredAfter(), usual, trial);
  }

  private static double at(
      String climate, LocalDate start, int after, MiticideCourse course, EfficacyTrial trial) {
    TreeMap<LocalDate, Double> highs = new TreeMap<>();
    IntStream.rangeClosed(0, after)
        .forEach(day -> highs.put(start.plusDays(day), trial.high().orElseThrow()));
    ColonyModel place = ColonyModel.in(Catalog.climate(climate).with(new DailyHighs(highs)));
    return EfficacyFit.efficacy(
        course, Setting.quiet(place, start, false, after, Against.FOLLOWUP));
  }
}
