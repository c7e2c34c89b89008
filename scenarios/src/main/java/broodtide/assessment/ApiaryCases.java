package broodtide.assessment;

import broodtide.catalog.ResistantMites;
import broodtide.control.Control;
import broodtide.study.Study;
import broodtide.study.TreatmentFile;
import broodtide.study.WashFile;
import broodtide.wash.Wash;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The cases of an apiary that is kept in one folder: a table of washes of all hives, a table of
 * treatments, and a study that says where the hives stand. The place of the study holds for every
 * hive; what it says of its colony, and what that colony was given, holds for that colony alone.
 */
public final class ApiaryCases {
  private ApiaryCases() {}

  /**
   * {@return one case for each colony of the table, all decided on the day after the newest wash or
   * treatment and looked at to the next spring}
   *
   * @param study where the hives stand
   * @param washes the washes of all hives
   * @param treatments what was done; empty for nothing
   * @throws broodtide.measure.Unworkable when the days of a colony span too many years
   */
  public static List<ColonyCase> of(
      Study study, WashFile washes, Optional<TreatmentFile> treatments) {
    Map<String, List<Wash>> byColony = washes.countsByColony();
    Map<String, List<Control>> given = new LinkedHashMap<>();
    for (String colony : byColony.keySet()) {
      List<Control> done = new ArrayList<>();
      if (colony.equals(study.colony().name())) {
        done.addAll(study.given());
      }
      treatments.ifPresent(file -> done.addAll(file.of(colony)));
      done.sort(Comparator.comparing(Control::from));
      given.put(colony, done);
    }
    List<ColonyCase> cases =
        ColonyCases.inYards(
            ColonyCases.withBoards(
                ColonyCases.ofCounts(
                    Place.of(study),
                    byColony,
                    washes.boards(),
                    given,
                    Optional.empty(),
                    Horizon::spring),
                washes.boards(),
                false),
            washes.yards());
    return cases.stream().map(c -> believed(c, study)).toList();
  }

  private static ColonyCase believed(ColonyCase c, Study study) {
    if (c.colony().equals(study.colony().name())) {
      return c.with(StudyPriors.of(study));
    }
    return study.resistant().isEmpty()
        ? c
        : c.with(
            ResistantMites.believed("\"resistant\" of the study", study.resistant(), c.priors()));
  }
}
