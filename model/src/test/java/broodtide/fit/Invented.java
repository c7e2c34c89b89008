package broodtide.fit;

import broodtide.control.Control;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.Places;
import broodtide.engine.Progress;
import broodtide.engine.Scenario;
import broodtide.engine.Workers;
import broodtide.mite.Immigration;
import broodtide.season.YearSpan;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.special.Gamma;

/** Invented records for tests of the posterior. */
public final class Invented {
  public static final LocalDate START = LocalDate.of(2025, 5, 1);

  private Invented() {}

  /** A place with a winter and one mite a day from outside in late summer. */
  static ColonyModel place() {
    YearSpan arrivals = new YearSpan(MonthDay.of(7, 1), MonthDay.of(11, 30));
    return ColonyModel.in(Places.seasonal())
        .with(new Immigration(List.of(new Immigration.Window(arrivals, 1.3))));
  }

  /** Days from {@link #START}, mites and bees of one wash. */
  static Wash wash(int day, int mites, int bees) {
    return Wash.of(START.plusDays(day), "A", mites, bees);
  }

  /** The washes of a quiet season, a month apart. */
  static List<Wash> four() {
    return List.of(wash(0, 2, 310), wash(31, 4, 300), wash(61, 9, 320), wash(92, 17, 305));
  }

  /** Strips that act for six weeks. */
  static MiticideCourse strips(int day) {
    Miticide strips =
        new Miticide("strips", 42, 0.15, 0, 0, 0, 5, 40, Miticide.SupersRule.LABEL_DECIDES);
    return MiticideCourse.once("strips of day " + day, strips, START.plusDays(day));
  }

  /** A scenario from {@link #START}. */
  static Scenario season(int days, Control... controls) {
    return new Scenario(place(), new Plan("done", List.of(controls)), START, days);
  }

  /** Log of the chance of a count under a negative binomial, by the book. */
  static double logChance(int count, double mean, double size) {
    return Gamma.logGamma(count + size)
        - Gamma.logGamma(size)
        - Gamma.logGamma(count + 1.0)
        + size * Math.log(size / (size + mean))
        + count * Math.log(mean / (size + mean));
  }

  /** The posterior of washes with usual priors. */
  public static SeasonPosterior posterior(
      Scenario past, List<Wash> washes, int particles, long seed, Workers workers) {
    return SeasonPosterior.of(
        past,
        washes,
        Priors.defaults(),
        new SeasonPosterior.SamplerSettings(particles, 3, seed),
        workers,
        Progress.NONE);
  }

  /** The same by a sampler, whatever a bank could do. */
  static SeasonPosterior sampled(
      Scenario past, List<Wash> washes, int particles, long seed, Workers workers) {
    return SeasonPosterior.sampled(
        past,
        SeasonPosterior.ordered(past, washes),
        List.of(),
        Priors.defaults(),
        new SeasonPosterior.SamplerSettings(particles, 3, seed),
        new RecordOrigin(past.model(), past.start()),
        Optional.empty(),
        workers,
        Progress.NONE);
  }
}
