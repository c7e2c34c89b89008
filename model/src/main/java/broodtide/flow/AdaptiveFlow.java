package broodtide.flow;

import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.apache.commons.math3.ode.sampling.StepHandler;
import org.apache.commons.math3.ode.sampling.StepInterpolator;

/**
 * Integrates equations over whole days with the adaptive Dormand-Prince 8(5,3) method and shows the
 * state at the start of every day. Source of the method: Hairer, Norsett and Wanner, Solving
 * Ordinary Differential Equations I, as Commons Math realises it.
 */
public final class AdaptiveFlow {
  private static final double SHORTEST_STEP = 1e-12;
  private static final double LONGEST_STEP = 5;

  /** Days; about what these equations allow, so that the first step is seldom far off. */
  private static final double FIRST_STEP = 0.5;

  private static final double SHORTEST_LEG = 1e-6;

  private final double absolute;
  private final double relative;
  private final double[] bends;
  private int evaluations;

  /**
   * An integrator.
   *
   * @param absolute absolute tolerance per component, in its own unit, above 0
   * @param relative relative tolerance, above 0
   * @param bends times at which the equations have a kink, rising; no step is taken across one
   */
  public AdaptiveFlow(double absolute, double relative, double... bends) {
    this.bends = bends;
    this.absolute = absolute;
    this.relative = relative;
  }

  /** Is shown the state at the start of a day. */
  @FunctionalInterface
  public interface DayState {
    /**
     * Looks at one day.
     *
     * @param day days since time 0
     * @param state the state vector at the start of the day; valid during the call alone
     */
    void at(int day, double[] state);
  }

  /** How often the equations were evaluated so far. */
  int evaluations() {
    return evaluations;
  }

  /**
   * Integrates from one day to another, smooth in between but for the bends.
   *
   * @param equations the equations
   * @param from first day
   * @param to last day, after the first
   * @param state the state at the first day; holds the state at the last day on return
   * @param each is shown every day after the first, the last one included
   */
  public void run(
      FirstOrderDifferentialEquations equations, int from, int to, double[] state, DayState each) {
    Days days = new Days(from, to, each);
    double at = from;
    for (double bend : bends) {
      if (bend - at > SHORTEST_LEG && to - bend > SHORTEST_LEG) {
        leg(equations, at, bend, state, days);
        at = bend;
      }
    }
    leg(equations, at, to, state, days);
    each.at(to, state);
  }

  private void leg(
      FirstOrderDifferentialEquations equations,
      double from,
      double to,
      double[] state,
      StepHandler days) {
    DormandPrince853Integrator integrator =
        new DormandPrince853Integrator(SHORTEST_STEP, LONGEST_STEP, absolute, relative);
    integrator.setInitialStepSize(Math.min(FIRST_STEP, to - from));
    integrator.addStepHandler(days);
    integrator.integrate(equations, from, state, to, state);
    evaluations += integrator.getEvaluations();
  }

  /** Reads the days in between off the dense output; the last day is read off the result itself. */
  private static final class Days implements StepHandler {
    private final int last;
    private final DayState each;
    private int next;

    Days(int from, int last, DayState each) {
      this.last = last;
      this.each = each;
      next = from + 1;
    }

    @Override
    public void init(double t0, double[] y0, double t) {}

    @Override
    public void handleStep(StepInterpolator step, boolean isLast) {
      while (next < last && next <= step.getCurrentTime()) {
        step.setInterpolatedTime(next);
        each.at(next, step.getInterpolatedState());
        next++;
      }
    }
  }
}
