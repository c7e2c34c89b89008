package broodtide.assessment;

import broodtide.engine.Quantity;
import broodtide.engine.Watched;
import broodtide.measure.Unworkable;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Set;

/** What plans are judged by. Less is better in each. */
public enum Outcome {
  /** Mites per 100 adult bees when the winter bees have been raised. */
  INFESTATION("infestation", "mites per 100 bees when winter bees have been raised", 1, 1) {
    @Override
    public double[] of(PlanRun run) {
      return run.infestation(run.colony().winterBeesRaised());
    }

    @Override
    public QuantileSummary band(PlanRun run) {
      return run.on(Quantity.INFESTATION, run.colony().winterBeesRaised());
    }

    @Override
    public LocalDate last(ColonyCase c) {
      return c.winterBeesRaised();
    }

    @Override
    public Watched watched(ColonyCase c) {
      return ALIVE.and(Quantity.INFESTATION, Set.of(c.winterBeesRaised()));
    }
  },
  /** Share of capped worker cells with a mite, mean over the weeks in which winter bees grow up. */
  WINTER_BROOD(
      "winter-brood", "worker brood with a mite while winter bees are raised, %", 100, 0.05) {
    @Override
    public double[] of(PlanRun run) {
      return run.winterBroodInfested();
    }

    @Override
    public QuantileSummary band(PlanRun run) {
      return run.winterBrood();
    }

    @Override
    public LocalDate last(ColonyCase c) {
      return c.winterBeesRaised();
    }

    @Override
    public Watched watched(ColonyCase c) {
      return ALIVE.and(Quantity.INFESTED_WORKER_SHARE, Set.copyOf(c.winterBroodDays()));
    }

    @Override
    public void check(ColonyCase c) {
      if (!c.raisesWinterBees()) {
        throw new Unworkable(
            "colony \""
                + c.colony()
                + "\": no winter bees are raised from "
                + c.now()
                + " to "
                + c.until()
                + ", so winter-bee brood cannot be judged; look further ahead or choose another"
                + " outcome");
      }
    }
  },
  /**
   * Chance that the colony is lost: dead or too weak by the low in spring, other causes than mites
   * included, or by the last day of a look ahead that does not reach it.
   */
  LOST("lost", "chance that the colony is lost, %", 100, PlanRanking.APART) {
    @Override
    public double[] of(PlanRun run) {
      return run.losses();
    }

    @Override
    public QuantileSummary band(PlanRun run) {
      return QuantileSummary.of(of(run));
    }

    @Override
    public double middle(PlanRun run) {
      return Arrays.stream(of(run)).average().orElse(Double.NaN);
    }

    @Override
    public Watched watched(ColonyCase c) {
      return ALIVE;
    }
  };

  /** Adults of every day say which colonies live. */
  private static final Watched ALIVE = Watched.daily(Set.of(Quantity.ADULTS));

  private final String word;
  private final String title;
  private final int shownTimes;
  private final double usualCost;

  Outcome(String word, String title, int shownTimes, double usualCost) {
    this.word = word;
    this.title = title;
    this.shownTimes = shownTimes;
    this.usualCost = usualCost;
  }

  /** {@return the word in files and options} */
  public String word() {
    return word;
  }

  /** {@return what it is, with the unit in which it is shown} */
  public String title() {
    return title;
  }

  /** {@return values times this are shown: 100 for shares, which are shown in per cent} */
  public int shownTimes() {
    return shownTimes;
  }

  /**
   * {@return by how much a treatment should better the outcome to be worth its trouble, when the
   * beekeeper does not say: one mite per 100 bees, five hundredths of winter-bee brood, or the
   * least difference of losses that {@link PlanRanking} takes for one} Choice.
   */
  public double usualCost() {
    return usualCost;
  }

  /**
   * {@return the outcome of a plan, by member}
   *
   * @param run the plan as it was played
   */
  public abstract double[] of(PlanRun run);

  /**
   * {@return the last day that has a say in it; what is begun on it or later changes nothing}
   *
   * @param c the case
   */
  public LocalDate last(ColonyCase c) {
    return c.until();
  }

  /**
   * {@return the outcome of a plan in colonies that are alive when the winter bees have been
   * raised; the chance of loss, in all of them}
   *
   * @param run the plan as it was played
   */
  public abstract QuantileSummary band(PlanRun run);

  /**
   * {@return what a run has to keep to be judged by it}
   *
   * @param c the case
   */
  public abstract Watched watched(ColonyCase c);

  /**
   * {@return the one figure that stands for all members: the median of {@link #band}, or the mean
   * chance of loss}
   *
   * @param run the plan as it was played
   */
  public double middle(PlanRun run) {
    return band(run).median();
  }

  /**
   * Checks that a case reaches far enough.
   *
   * @param c the case
   * @throws Unworkable when it does not
   */
  public void check(ColonyCase c) {}
}
