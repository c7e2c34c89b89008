package broodtide.assessment;

import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.ControlTemplate.Against;
import broodtide.control.Control;
import broodtide.control.HazardSpread;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.control.QueenCaging;
import broodtide.engine.ColonyModel;
import broodtide.engine.DailyEngine;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.Trajectory;
import broodtide.measure.OutOfRange;
import broodtide.measure.Unworkable;
import broodtide.mite.Immigration;
import broodtide.mite.StockTraits;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Turns an efficacy that a trial has published into hazards, and hazards back into the efficacy
 * that a trial of them would show. A trial knows neither the mites in capped cells nor the mites to
 * come, so the same hazards show different efficacies by date, brood and reckoning; that is why the
 * setting is part of the fit.
 *
 * <p>The hazards in {@code scenarios/library/controls} come from here. To redo them after a change
 * to the model, run {@code mvn -pl scenarios -am test -Dtest=ShippedHazardsTest
 * -Dsurefire.failIfNoSpecifiedTests=false}; each file that no longer fits is named with the numbers
 * to write into it.
 */
public final class EfficacyFit {
  /** Mites per 100 bees at the start of a trial: few enough that crowding plays no part. */
  private static final double INFESTATION = 1;

  /** Days before the treatment from which the colony is followed. */
  private static final int LEAD = 30;

  /** Days after which a caged queen's last drone, 24 days from the egg, is out. */
  private static final int UNTIL_BROODLESS = 28;

  /** Highest hazard that is looked at, 1/day, the most that {@link Miticide} allows. */
  private static final double HIGHEST = 20;

  /** A common year, for settings that name a day of the year only. */
  private static final int YEAR = 2001;

  private EfficacyFit() {}

  /**
   * Where and how an efficacy was measured.
   *
   * @param model the place and the rates; its immigration counts
   * @param start first day of the treatment
   * @param broodless whether the queen is caged beforehand, long enough that all brood is out, and
   *     until the treatment ends
   * @param infestation mites per 100 bees 30 days before the treatment, 0.001 to 300
   * @param measuredAfter days from the first treatment to the measurement, 1 to 365
   * @param against what the mites that are left are set against
   */
  public record Setting(
      ColonyModel model,
      LocalDate start,
      boolean broodless,
      double infestation,
      int measuredAfter,
      Against against) {
    /** Checks ranges. */
    public Setting {
      OutOfRange.check("infestation", infestation, 0.001, 300, "mites per 100 adult bees");
      OutOfRange.check("measuredAfter", measuredAfter, 1, 365, "days");
    }

    /**
     * {@return the setting that a control of the library states}
     *
     * @param stated the setting as its file states it
     * @throws broodtide.forms.BadInput when there is no such climate
     */
    public static Setting of(ControlTemplate.Setting stated) {
      return quiet(
          ColonyModel.in(Catalog.climate(stated.climate())),
          stated.date().atYear(YEAR),
          stated.broodless(),
          stated.measuredAfter(),
          stated.against());
    }

    /**
     * {@return a trial with few mites, average stock and no mites from outside}
     *
     * @param model the place; its stock and immigration are left aside
     * @param start first day of the treatment
     * @param broodless whether the colonies have no brood
     * @param measuredAfter days from then to the measurement, 1 to 365
     * @param against what the mites that are left are set against
     */
    public static Setting quiet(
        ColonyModel model, LocalDate start, boolean broodless, int measuredAfter, Against against) {
      ColonyModel plain = model.with(Immigration.NONE).with(StockTraits.AVERAGE);
      return new Setting(plain, start, broodless, INFESTATION, measuredAfter, against);
    }
  }

  /**
   * The share of all mites that a course takes.
   *
   * @param course how it is given; its start is moved to the setting's
   * @param setting where and how it is measured
   * @return 0 (nothing) to 1 (every mite); below 0 where mites grow in number all the same
   */
  public static double efficacy(MiticideCourse course, Setting setting) {
    MiticideCourse placed = at(setting.start(), course);
    List<Control> before = broodBreak(placed, setting);
    List<Control> treated = new ArrayList<>(before);
    treated.add(placed);
    return share(
        run(setting, new Plan("untreated", before)),
        run(setting, new Plan("treated", treated)),
        setting);
  }

  /**
   * {@return the substance with both hazards multiplied so that its course takes a given share of
   * all mites}
   *
   * @param course how it is given, with the wanted ratio of the two hazards
   * @param setting where and how the share was measured
   * @param share the published efficacy, above 0 and below 1
   * @throws Unworkable when no hazard up to 20 a day reaches the share
   */
  public static Miticide fit(MiticideCourse course, Setting setting, double share) {
    Miticide shape = course.substance();
    double most = HIGHEST / Math.max(shape.onBees(), shape.inCells());
    UnivariateFunction miss =
        factor -> efficacy(with(course, shape.scaled(factor)), setting) - share;
    double least = miss.value(0);
    double utmost = miss.value(most);
    if (!(least < 0 && utmost > 0)) {
      throw new Unworkable(
          String.format(
              Locale.ROOT,
              "%s cannot take a share of %.3f in this setting: without it the reckoning gives"
                  + " %.3f, with a hazard of %.0f a day %.3f",
              shape.name(),
              share,
              least + share,
              HIGHEST,
              utmost + share));
    }
    return shape.scaled(new BrentSolver(1e-9, 1e-12).solve(500, miss, 0, most));
  }

  /**
   * {@return how far the logarithm of a fitted course's hazards has to spread for efficacies to
   * spread as they do: from the fitted share down to the one a standard deviation lower, where
   * nothing runs into what the treatment can reach at all}
   *
   * @param course the fitted course
   * @param setting where and how the share was measured
   * @param share the efficacy it was fitted to
   * @param between standard deviation of the logit between trials
   * @param within standard deviation of the logit between colonies of one trial
   */
  public static HazardSpread spread(
      MiticideCourse course, Setting setting, double share, double between, double within) {
    double total = Math.hypot(between, within);
    double low = 1 / (1 + Math.exp(total - Math.log(share / (1 - share))));
    double factor = fit(course, setting, low).onBees() / course.substance().onBees();
    double perLogit = -Math.log(factor) / total;
    return new HazardSpread(perLogit * between, perLogit * within);
  }

  private static MiticideCourse at(LocalDate start, MiticideCourse c) {
    return new MiticideCourse(c.name(), c.substance(), start, c.applications(), c.every());
  }

  private static MiticideCourse with(MiticideCourse c, Miticide substance) {
    return new MiticideCourse(c.name(), substance, c.start(), c.applications(), c.every());
  }

  private static List<Control> broodBreak(MiticideCourse course, Setting setting) {
    return setting.broodless()
        ? List.of(
            new QueenCaging("no brood", setting.start().minusDays(UNTIL_BROODLESS), course.to()))
        : List.of();
  }

  private static Trajectory run(Setting s, Plan plan) {
    LocalDate from = s.start().minusDays(LEAD);
    return DailyEngine.run(
        new Scenario(s.model(), plan, from, LEAD + s.measuredAfter()),
        SimulatedColony.average(s.infestation()));
  }

  private static double share(Trajectory untreated, Trajectory treated, Setting s) {
    LocalDate last = s.start().plusDays(s.measuredAfter());
    double left = treated.at(Quantity.MITES, last);
    return switch (s.against()) {
      case UNTREATED -> 1 - left / untreated.at(Quantity.MITES, last);
      case START -> 1 - left / treated.at(Quantity.MITES, s.start());
      case FOLLOWUP -> {
        double killed = treated.ledger().killed();
        yield killed / (killed + left);
      }
    };
  }
}
