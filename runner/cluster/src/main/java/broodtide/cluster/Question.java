package broodtide.cluster;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Horizon;
import broodtide.assessment.Place;
import broodtide.assessment.PlaceCases;
import broodtide.assessment.UsualPlans;
import broodtide.catalog.Catalog;
import broodtide.catalog.ResistantMites;
import broodtide.catalog.Surroundings;
import broodtide.control.Plan;
import broodtide.decision.PlanChoice;
import broodtide.decision.PlanText;
import broodtide.fit.SeasonPosterior.SamplerSettings;
import broodtide.season.Climate;
import broodtide.season.YearSpan;
import broodtide.wash.ThresholdSet;
import java.io.Serializable;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What is asked of every hive, in the words of the command line, which are read again wherever a
 * yard is worked on.
 *
 * @param compare whether plans are compared; otherwise waiting alone is looked at
 * @param climate the climate where a row names none; null for none
 * @param south whether the colonies stand south of the equator
 * @param neighbours colonies around
 * @param threshold the treatment threshold
 * @param supers when honey supers stand, like 05-10..07-25; null for the climate's
 * @param winterBees when winter bees are reared; null for the climate's
 * @param resistant active substances that did badly
 * @param until the last day to look at; null for the usual one
 * @param decideOn the day of decision; null for the day after the newest wash or treatment
 * @param with the control of the usual plans; null to choose by date
 * @param own plans of one's own
 * @param only whether the usual plans are left out
 * @param colonies simulated colonies
 * @param seed seed of the random numbers
 * @param today no wash or treatment may be later
 */
record Question(
    boolean compare,
    @Nullable ShippedText climate,
    boolean south,
    String neighbours,
    ShippedText threshold,
    @Nullable String supers,
    @Nullable String winterBees,
    List<String> resistant,
    @Nullable LocalDate until,
    @Nullable LocalDate decideOn,
    @Nullable ShippedText with,
    List<String> own,
    boolean only,
    int colonies,
    long seed,
    LocalDate today)
    implements Serializable {
  /** What the climate of a yard is called when it is the usual one. */
  String usualClimate() {
    return climate == null ? "" : climate.name();
  }

  /** What makes the cases of colonies in a climate. */
  PlaceCases cases(String climateName, LocalDate now) {
    Horizon usual = compare ? Horizon::spring : Horizon::winterBees;
    return PlaceCases.of(place(climateName), now, until == null ? usual : Horizon.on(until));
  }

  private Place place(String climateName) {
    Climate here =
        climate != null && climateName.equals(climate.name())
            ? climate.read(Catalog.CLIMATES)
            : Catalog.climate(climateName);
    Surroundings around =
        Arrays.stream(Surroundings.values())
            .filter(s -> s.word().equals(neighbours))
            .findFirst()
            .orElseThrow();
    return Place.of(here, south, around, thresholds())
        .dated(
            Optional.ofNullable(supers).map(text -> YearSpan.parse(text).orElseThrow()),
            Optional.ofNullable(winterBees).map(text -> YearSpan.parse(text).orElseThrow()));
  }

  private ThresholdSet thresholds() {
    return threshold.text() == null
        ? Catalog.threshold(threshold.name())
        : threshold.read(Catalog.THRESHOLDS);
  }

  /** With the substances in mind that did badly here. */
  ColonyCase believed(ColonyCase c) {
    return resistant.isEmpty()
        ? c
        : c.with(ResistantMites.believed("--resistant", resistant, c.priors()));
  }

  /** Which plans are compared; refused when their options do not go together. */
  PlanChoice choice() {
    return new PlanChoice(
        Optional.ofNullable(with).map(w -> w.read(Catalog.CONTROLS)),
        own.stream().map(PlanText::read).toList(),
        only);
  }

  /** The plans of a colony. */
  List<Plan> plans(ColonyCase c) {
    return compare ? choice().of(c, Optional.empty()) : List.of(Plan.waiting(UsualPlans.WAIT));
  }

  SamplerSettings settings() {
    return new SamplerSettings(colonies, 3, seed);
  }
}
