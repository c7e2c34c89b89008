package broodtide.decision;

import broodtide.catalog.ControlTemplate;
import broodtide.fit.Prior;
import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.util.FastMath;

/**
 * What the washes of a treated colony say of resistance: whether the treatment's strength looks
 * more like that of apiaries with resistant mites or more like the usual one. Immutable.
 *
 * @param substance the active substance
 * @param chance chance of resistant mites, 0 to 1, had they been as likely as not before the
 *     washes, and had nothing else been wrong
 */
public record ResistanceCheck(String substance, double chance) {
  /**
   * {@return what the washes say; empty when mites are not known to resist the treatment}
   *
   * @param check the treatment as its washes judge it
   * @param template the control of the library
   */
  public static Optional<ResistanceCheck> of(TreatmentCheck check, ControlTemplate template) {
    Prior usual = usual(check, template);
    double open = check.colony().priors().efficacy(check.treatment().substance()).median();
    return template
        .efficacy()
        .flatMap(ControlTemplate.Efficacy::resistant)
        .map(
            r ->
                new ResistanceCheck(
                    template.substance().orElseThrow(),
                    chance(check.strength(), open, usual, r.belief())));
  }

  /**
   * {@return what the hives of an apiary say together; empty when mites are not known to resist the
   * treatment}
   *
   * @param apiary the hives that were treated together
   * @param check one of them
   * @param template the control of the library
   */
  public static Optional<ResistanceCheck> of(
      ApiaryTreatmentCheck apiary, TreatmentCheck check, ControlTemplate template) {
    Prior usual = usual(check, template);
    return template
        .efficacy()
        .flatMap(ControlTemplate.Efficacy::resistant)
        .map(
            r ->
                new ResistanceCheck(
                    template.substance().orElseThrow(),
                    chance(apiary.measured(), apiary.error(), usual, r.belief())));
  }

  private static Prior usual(TreatmentCheck check, ControlTemplate template) {
    return check.colony().priors().efficacy(template.usual().course().orElseThrow().substance());
  }

  /** The chance of resistant mites from one measured logarithm of the strength. */
  static double chance(double measured, double error, Prior usual, Prior resistant) {
    double as = density(measured, error, resistant);
    return as / Math.max(Double.MIN_NORMAL, as + density(measured, error, usual));
  }

  private static double density(double measured, double error, Prior believed) {
    double sd = FastMath.hypot(error, believed.logSd());
    return new NormalDistribution(null, FastMath.log(believed.median()), sd).density(measured);
  }

  /**
   * The chance of resistant mites from strengths that were drawn with any strength thinkable: each
   * draw is weighed by how much likelier either belief makes it than the open one did.
   *
   * @param strength logarithms of the strength, by member
   * @param open median of the open belief, whose spread is {@link TreatmentCheck#OPEN}
   * @param usual what is believed of the strength otherwise
   * @param resistant what is believed of it where mites resist
   */
  static double chance(double[] strength, double open, Prior usual, Prior resistant) {
    NormalDistribution drawn = normal(open, TreatmentCheck.OPEN);
    double as = weight(strength, drawn, normal(resistant.median(), resistant.logSd()));
    double against = weight(strength, drawn, normal(usual.median(), usual.logSd()));
    return as / Math.max(Double.MIN_NORMAL, as + against);
  }

  private static double weight(
      double[] strength, NormalDistribution drawn, NormalDistribution believed) {
    return Arrays.stream(strength).map(s -> believed.density(s) / drawn.density(s)).sum();
  }

  private static NormalDistribution normal(double median, double logSd) {
    return new NormalDistribution(null, Math.log(median), Math.max(1e-6, logSd));
  }
}
