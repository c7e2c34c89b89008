package broodtide.catalog;

import broodtide.measure.OutOfRange;
import broodtide.season.Climate;
import broodtide.season.Curve;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Five things that beekeepers know of their place, each of which tells climates apart. How far an
 * answer may lie from a climate before that speaks against the climate is a choice. Immutable.
 */
public enum ClimateQuestion {
  /** When the first winter bees are raised, a day of the year. */
  WINTER_BEES("When do your colonies begin to raise winter bees?", Kind.DAY, 12) {
    @Override
    double of(Climate climate) {
      return phase(climate.winterBees().from());
    }
  },

  /** How much brood there is at midwinter: none, a little or plenty. */
  MIDWINTER_BROOD("Is there brood in midwinter?", Kind.AMOUNT, 0.5) {
    @Override
    double of(Climate climate) {
      double lowest = climate.laying().lowest();
      if (lowest <= 0) {
        return 0;
      }
      return lowest < PLENTY ? 1 : 2;
    }
  },

  /** When the last honey supers come off, a day of the year. */
  SUPERS_OFF("When do the last honey supers come off?", Kind.DAY, 20) {
    @Override
    double of(Climate climate) {
      return phase(climate.supers().to());
    }
  },

  /** When the first drone brood of the year is seen, a day of the year. */
  DRONE_BROOD("When do you see the first drone brood?", Kind.DAY, 12) {
    @Override
    double of(Climate climate) {
      Curve share = climate.droneShare();
      LocalDate first = climate.southern() ? LocalDate.of(2025, 7, 2) : LocalDate.of(2025, 1, 1);
      LocalDate day = first;
      while (share.at(day) < SEEN && day.isBefore(first.plusYears(1))) {
        day = day.plusDays(1);
      }
      return phase(MonthDay.from(day));
    }
  },

  /** The usual daily high of the hottest month, degrees Celsius. */
  SUMMER_HIGH(
      "How warm is a usual afternoon in the hottest month (degrees Celsius)?", Kind.DEGREES, 2.5) {
    @Override
    double of(Climate climate) {
      return climate.warmth().peak();
    }
  };

  /** What kind of answer is expected. */
  public enum Kind {
    /** A day of every year. */
    DAY,
    /** None, a little or plenty. */
    AMOUNT,
    /** Degrees Celsius. */
    DEGREES
  }

  /** The words of {@link Kind#AMOUNT}, from nothing to much. */
  public static final List<String> AMOUNTS = List.of("none", "little", "plenty");

  private static final int YEAR = 365;
  private static final double COLDEST = 10;
  private static final double HOTTEST = 50;
  private static final Pattern MONTH_DAY = Pattern.compile("\\d{2}-\\d{2}");
  private static final Pattern NUMBER = Pattern.compile("\\d{1,2}(\\.\\d{1,2})?");

  /** Eggs a day from which brood is plenty. Choice. */
  private static final double PLENTY = 300;

  /** Share of drone cells that a beekeeper sees. Choice. */
  private static final double SEEN = 0.008;

  private final String text;
  private final Kind kind;
  private final double tolerance;

  ClimateQuestion(String text, Kind kind, double tolerance) {
    this.text = text;
    this.kind = kind;
    this.tolerance = tolerance;
  }

  /**
   * {@return what a climate would answer: day of the year from 0 to 364, 0 to 2 for none, little
   * and plenty, or degrees Celsius}
   *
   * @param climate the year of a place, by that place's calendar
   */
  abstract double of(Climate climate);

  /** {@return the question, as a beekeeper is asked} */
  public String text() {
    return text;
  }

  /** {@return what kind of answer is expected} */
  public Kind kind() {
    return kind;
  }

  /** {@return the name that options and files use, such as {@code winter-bees}} */
  public String id() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** {@return what an answer looks like} */
  public String expected() {
    return switch (kind) {
      case DAY -> "a day such as 08-20 (month-day)";
      case AMOUNT -> String.join(", ", AMOUNTS);
      case DEGREES -> "degrees Celsius, 10 to 50";
    };
  }

  /**
   * {@return the question of a name}
   *
   * @param id such as {@code winter-bees}
   */
  public static Optional<ClimateQuestion> named(String id) {
    return List.of(values()).stream().filter(q -> q.id().equals(id)).findFirst();
  }

  /**
   * {@return an answer as a number, as {@link ClimateAnswers} holds it}
   *
   * @param answer as a beekeeper wrote it
   * @throws OutOfRange when it is no answer to this question
   */
  public double read(String answer) {
    String word = answer.strip().toLowerCase(Locale.ROOT);
    Optional<Double> value =
        switch (kind) {
          case DAY -> day(word);
          case AMOUNT ->
              Optional.of(AMOUNTS.indexOf(word)).filter(i -> i >= 0).map(Integer::doubleValue);
          case DEGREES ->
              Optional.of(word)
                  .filter(w -> NUMBER.matcher(w).matches())
                  .map(Double::valueOf)
                  .filter(d -> d >= COLDEST && d <= HOTTEST);
        };
    return value.orElseThrow(() -> new OutOfRange(id(), answer, expected()));
  }

  /**
   * {@return how far a climate lies from an answer: days later (negative for earlier), steps of
   * amount, or degrees warmer}
   *
   * @param answer as {@link #read} gives it
   * @param climate the year of a place, by that place's calendar
   */
  public double difference(double answer, Climate climate) {
    double apart = of(climate) - answer;
    return kind == Kind.DAY ? Math.IEEEremainder(apart, YEAR) : apart;
  }

  /** {@return the difference that counts as one: days, steps or degrees} */
  double tolerance() {
    return tolerance;
  }

  /**
   * {@return the day of every year that a number of {@link Kind#DAY} stands for}
   *
   * @param phase day of the year, 0 to 364
   */
  public static MonthDay day(double phase) {
    return MonthDay.from(LocalDate.ofYearDay(2025, 1 + (int) Math.round(phase) % YEAR));
  }

  private static Optional<Double> day(String word) {
    if (!MONTH_DAY.matcher(word).matches()) {
      return Optional.empty();
    }
    int month = Integer.parseInt(word.substring(0, 2));
    int day = Integer.parseInt(word.substring(3));
    if (month < 1 || month > 12 || day < 1 || day > LocalDate.of(2025, month, 1).lengthOfMonth()) {
      return Optional.empty();
    }
    return Optional.of(phase(MonthDay.of(month, day)));
  }

  private static double phase(MonthDay day) {
    return day.atYear(2025).getDayOfYear() - 1.0;
  }
}
