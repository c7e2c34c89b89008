package broodtide.engine;

import broodtide.flow.FlowEquations;
import broodtide.flow.FlowState;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.apache.commons.math3.ode.sampling.StepHandler;
import org.apache.commons.math3.ode.sampling.StepInterpolator;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.sampling.ODEFixedStepHandler;
import org.hipparchus.ode.sampling.StepNormalizer;

/**
 * The flow engine's equations given to library integrators as anyone would, in one stretch and with
 * nothing known of where the curves bend. It lives in the engine's package because it reads what
 * the engine shows nobody else.
 */
public final class PlainFlow {
  private static final double SHORTEST_STEP = 1e-12;
  private static final double LONGEST_STEP = 5;

  /** Absolute tolerance per relative one, as the flow engine has it. */
  private static final double ABSOLUTE = 100;

  private final FlowState layout;
  private final FlowEquations equations;
  private final double[] start;
  private final int days;

  private PlainFlow(FlowState layout, FlowEquations equations, int days) {
    this.layout = layout;
    this.equations = equations;
    this.days = days;
    start = layout.vector().clone();
  }

  /**
   * A run.
   *
   * @param adults adult bees at the start of every day
   * @param mites mites at the start of every day
   * @param evaluations how often the equations were evaluated
   */
  @SuppressWarnings("ArrayRecordComponent") // read once, never compared
  public record Run(double[] adults, double[] mites, int evaluations) {}

  /** The equations of a scenario without controls, and where they start. */
  public static PlainFlow of(Scenario scenario, SimulatedColony member, int stages) {
    FlowState layout =
        FlowState.of(
            StandardColony.on(scenario.model(), scenario.start()).colonies(List.of(member)),
            stages,
            scenario.model().mites().clumping());
    FlowEquations equations =
        new FlowEquations(layout, Schedule.of(scenario), scenario.model(), member);
    equations.enter(0);
    return new PlainFlow(layout, equations, scenario.days());
  }

  /** By Commons Math. */
  public Run commons(double tolerance) {
    Reading reading = new Reading();
    DormandPrince853Integrator integrator =
        new DormandPrince853Integrator(
            SHORTEST_STEP, LONGEST_STEP, ABSOLUTE * tolerance, tolerance);
    integrator.addStepHandler(reading);
    reading.see(0, start);
    integrator.integrate(equations, 0, start, days, new double[start.length]);
    return new Run(reading.adults, reading.mites, integrator.getEvaluations());
  }

  /** By Hipparchus. */
  public Run hipparchus(double tolerance) {
    Reading reading = new Reading();
    var integrator =
        new org.hipparchus.ode.nonstiff.DormandPrince853Integrator(
            SHORTEST_STEP, LONGEST_STEP, ABSOLUTE * tolerance, tolerance);
    ODEFixedStepHandler each =
        (state, last) -> reading.see((int) Math.rint(state.getTime()), state.getPrimaryState());
    integrator.addStepHandler(new StepNormalizer(1, each));
    integrator.integrate(new ForHipparchus(), new ODEState(0, start), days);
    return new Run(reading.adults, reading.mites, integrator.getEvaluations());
  }

  private final class ForHipparchus implements OrdinaryDifferentialEquation {
    @Override
    public int getDimension() {
      return start.length;
    }

    @Override
    public double[] computeDerivatives(double t, double[] y) {
      double[] rate = new double[y.length];
      equations.computeDerivatives(t, y, rate);
      return rate;
    }
  }

  /** Adults and mites by day. */
  private final class Reading implements StepHandler {
    final double[] adults = new double[days + 1];
    final double[] mites = new double[days + 1];
    private int next = 1;

    Reading() {
      Arrays.fill(adults, Double.NaN);
    }

    void see(int day, double[] y) {
      FlowState state = layout.over(y);
      adults[day] = state.adults(0);
      mites[day] = state.mites(0);
    }

    @Override
    public void init(double t0, double[] y0, double t) {}

    @Override
    public void handleStep(StepInterpolator step, boolean isLast) {
      while (next <= step.getCurrentTime()) {
        step.setInterpolatedTime(next);
        see(next, step.getInterpolatedState());
        next++;
      }
    }
  }
}
