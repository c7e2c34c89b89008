package broodtide.fit;

import broodtide.engine.SimulatedColony;
import broodtide.measure.Tag;
import java.time.LocalDate;
import java.util.function.ObjDoubleConsumer;

/**
 * What is not known of a colony. Each unknown is declared here and nowhere else: how it is called
 * in files, its unit, what is usually believed of it, whether each colony has one or each miticide
 * course or season, whether washes can teach it, how much of it hives of a yard share, and what of
 * a colony it sets. The order is that of a particle.
 *
 * @since 0.2.0
 */
public enum Unknown {
  /** Infestation on the first day. */
  INFESTATION(
      "infestation",
      Unit.PER_HUNDRED,
      new Prior(
          "mites per 100 adult bees on the first day",
          1.0,
          1.3,
          300,
          Tag.CHOICE,
          "wide on purpose: 0.1 to 13 in nineteen colonies of twenty"),
      (colony, value) -> colony.infestation = value),

  /** Daughters of a mite against the average, up to the last wash. */
  REPRODUCTION_FACTOR(
      "reproductionFactor",
      Unit.FACTOR,
      new Prior(
          "factor on the mites' daughters",
          1.0,
          0.5,
          3,
          Tag.DERIVED,
          "shared trial data: 0.3 to 0.5 shared by hives of a yard and 0.3 of each."
              + " Growth varies by about 30 % between years, Harris 2003, which gives 0.2."
              + " Stock alone, 1.7 and 9.6 fold a summer in Ontario (De la Mora et al. 2020,"
              + " PMC7761820), would give 0.18"),
      (colony, value) -> colony.reproduction.put(colony.season, value)) {
    @Override
    boolean growth() {
      return true;
    }

    @Override
    public boolean ofSeason() {
      return true;
    }

    @Override
    public double shared() {
      return 0.64;
    }
  },

  /** Eggs of the queen against the average. */
  LAYING_FACTOR(
      "layingFactor",
      Unit.FACTOR,
      new Prior(
          "factor on laying",
          1.0,
          0.20,
          3,
          Tag.CHOICE,
          "colonies of one apiary differ by about a fifth; year-to-year growth varies by about"
              + " 30 % (Harris 2003)"),
      (colony, value) -> colony.laying = value),

  /**
   * Bees and brood on the first day against what the standard year and the colony's laying give.
   */
  START_SIZE(
      "startSize",
      Unit.FACTOR,
      new Prior(
          "size on the first day, relative to a colony of its strength",
          1.0,
          0.30,
          5,
          Tag.CHOICE,
          "choice; notes of frames of bees narrow it"),
      (colony, value) -> colony.startSize = value),

  /** Mites brought from other colonies against what is assumed for the place. */
  REINVASION(
      "reinvasion",
      Unit.FACTOR,
      new Prior(
          "factor on mites from outside",
          1.0,
          0.65,
          100,
          Tag.DERIVED,
          "1.6 to 13.7 mites a day, Greatti et al. 1992, taken as 90 % of colonies; 2.5 to"
              + " 10.9 and 0.7 to 2.3, Frey & Rosenkranz 2014, are within it"),
      (colony, value) -> colony.reinvasion.put(colony.season, value)) {
    @Override
    public boolean ofSeason() {
      return true;
    }
  },

  /** Mites brought in the late season, on top of reinvasion. */
  LATE_REINVASION(
      "lateReinvasion",
      Unit.FACTOR,
      new Prior(
          "factor on mites from outside from August to November, on top of the one above",
          1.0,
          0.81,
          100,
          Tag.DERIVED,
          "from the ranges of sites and autumns of Frey & Rosenkranz 2014; three quarters of its"
              + " variance are shared by hives of a yard"),
      (colony, value) -> colony.lateReinvasion.put(colony.season, value)) {
    @Override
    public boolean ofSeason() {
      return true;
    }

    @Override
    boolean seen(BeeYears years, int season, LocalDate lastWash) {
      return years.late(season, LocalDate.MIN, lastWash);
    }

    @Override
    public double shared() {
      return 0.75;
    }
  },

  /**
   * Size of the negative binomial of washes around the colony's mean; the higher, the less spread.
   */
  OVERDISPERSION(
      "overdispersion",
      Unit.SIZE,
      new Prior(
          "size of the negative binomial of washes around the colony's mean",
          7,
          0.7,
          1e6,
          Tag.CHOICE,
          "one wash is nearly binomial, but washes of a colony differ by frame and day; choice,"
              + " with which field washes are forecast well"),
      (colony, value) -> colony.overdispersion = value),

  /** Multiplier on the daily hazards of one miticide course. */
  EFFICACY_FACTOR(
      "efficacyFactor",
      Unit.FACTOR,
      new Prior(
          "factor on the hazards of a miticide",
          1.0,
          1,
          5,
          Tag.DERIVED,
          "its log sd counts in the spread of the substance, between trials and between colonies"
              + " of a trial together, as its trials show it"),
      (colony, value) -> colony.efficacy.add(value)) {
    @Override
    public boolean ofCourse() {
      return true;
    }
  },

  /** Share of the mites that carry virus. */
  INFECTIVITY(
      "infectivity",
      Unit.SHARE,
      new Prior(
          "share of mites that carry virus",
          SimulatedColony.USUAL_INFECTIVITY,
          1,
          1,
          Prior.Scale.LOGIT,
          Tag.CHOICE,
          "choice; yards with the same washes differ through their viruses, and washes cannot"
              + " tell them apart"),
      (colony, value) -> colony.infectivity = value) {
    @Override
    public boolean taught() {
      return false;
    }
  },

  /** Daughters of a mite from the last wash on, as far as growth so far does not tell. */
  GROWTH_TO_COME(
      "growthToCome",
      Unit.FACTOR,
      new Prior(
          "factor on the mites' daughters from the last wash on; correlation with growth so far"
              + " 0.25, by choice",
          1.0,
          0.5,
          3,
          Tag.DERIVED,
          "as growth so far: 0.3 to 0.5 shared by hives of a yard and 0.3 of each in"
              + " shared trial data. A shock of the season to come cannot be learnt from past"
              + " washes"),
      (colony, value) -> colony.growthToCome = value) {
    @Override
    boolean growth() {
      return true;
    }

    @Override
    public boolean taught() {
      return false;
    }

    @Override
    public boolean ahead() {
      return true;
    }

    @Override
    public double shared() {
      return 0.64;
    }
  };

  private final String id;
  private final Unit unit;
  private final Prior usual;
  private final ObjDoubleConsumer<ColonyDraw> set;

  Unknown(String id, Unit unit, Prior usual, ObjDoubleConsumer<ColonyDraw> set) {
    this.id = id;
    this.unit = unit;
    this.usual = usual;
    this.set = set;
  }

  /** What the figures of an unknown mean. */
  public enum Unit {
    /** Mites per 100 adult bees. */
    PER_HUNDRED("mites per 100 adult bees"),
    /** A multiplier; 1 is usual. */
    FACTOR("factor"),
    /** A size without unit. */
    SIZE("1"),
    /** A share, 0 to 1. */
    SHARE("share");

    private final String word;

    Unit(String word) {
      this.word = word;
    }

    /** {@return what stands for it in files} */
    public String word() {
      return word;
    }
  }

  /** {@return its name in files, which stays the same} */
  public String id() {
    return id;
  }

  /** {@return what its figures mean} */
  public Unit unit() {
    return unit;
  }

  /** {@return what is usually believed of it before any wash} */
  public Prior usual() {
    return usual;
  }

  /** {@return whether each miticide course has one of its own, rather than each colony} */
  public boolean ofCourse() {
    return false;
  }

  /** {@return whether each season, from one spring to the next, has one of its own} */
  public boolean ofSeason() {
    return false;
  }

  /** {@return whether it is of the days after the last wash alone} */
  public boolean ahead() {
    return false;
  }

  /**
   * {@return which share of its variance the hives of a yard share in a season, 0 to 1; the spread
   * of the prior is the total of what they share and what is each hive's own}
   */
  public double shared() {
    return 0;
  }

  /** Whether it is growth, of which one's own records can say that it is too high or too low. */
  boolean growth() {
    return false;
  }

  /** {@return whether washes can teach it} */
  public boolean taught() {
    return true;
  }

  /** Whether it has any part in what washes up to a day show of a season. */
  boolean seen(BeeYears years, int season, LocalDate lastWash) {
    return !ahead();
  }

  /** Sets what it sets of a colony in a season. */
  final void set(ColonyDraw colony, int season, double value) {
    colony.season = season;
    set.accept(colony, value);
  }
}
