package broodtide.classroom;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.ColonyCases;
import broodtide.assessment.Place;
import broodtide.chart.PriorPosterior;
import broodtide.control.MiticideCourse;
import broodtide.decision.TreatmentCheck;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import broodtide.lesson.Lesson;
import broodtide.report.TreatmentPicture;
import broodtide.wash.Wash;
import broodtide.words.Plain;
import broodtide.words.TreatmentWords;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A hive of a lesson whose washes judge its treatment, as the command {@code worked} judges it.
 *
 * @param words the verdict in words
 * @param picture the mites with the treatment and without it, and what is believed of its efficacy
 *     before the washes and with them, as SVG
 * @param efficacy the same efficacy, to be drawn beside that of other hives
 */
record JudgedHive(String words, String picture, PriorPosterior.Unknown efficacy) {
  private static final long SEED = 1;
  private static final int COLONIES = 1024;

  /** Judges a hive of the plan of a line. */
  static JudgedHive of(Lesson.Judged hive, Lesson.Line line) {
    List<Wash> washes =
        hive.washes().stream()
            .map(w -> Wash.of(w.date(), hive.hive(), w.mites(), w.bees()))
            .toList();
    ColonyCase untreated =
        ColonyCases.ofWashes(
                Place.of(line.setting()),
                Map.of(hive.hive(), washes),
                Map.of(),
                Optional.empty(),
                (stages, now) -> now.plusDays(1))
            .get(0);
    MiticideCourse given =
        line.scenario().plan().controls().stream()
            .flatMap(control -> control.course().stream())
            .findFirst()
            .orElseThrow();
    try (Workers workers = Workers.all()) {
      TreatmentCheck check =
          TreatmentCheck.of(
              untreated,
              given,
              new SeasonPosterior.SamplerSettings(
                  COLONIES, SeasonPosterior.SamplerSettings.usual(SEED).moves(), SEED),
              workers,
              Progress.NONE);
      String verdict = TreatmentWords.verdict(check, given.name());
      boolean open = check.verdict() == TreatmentCheck.Verdict.CANNOT_TELL && !check.noMites();
      return new JudgedHive(
          open ? verdict + " " + TreatmentWords.taken(check) : verdict,
          TreatmentPicture.of(check).svg(),
          TreatmentPicture.efficacy(
              "Hive "
                  + hive.hive()
                  + ": % of all mites taken by "
                  + Plain.shortDay(check.after().date()),
              check));
    }
  }
}
