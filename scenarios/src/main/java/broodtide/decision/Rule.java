package broodtide.decision;

import broodtide.catalog.ControlTemplate;
import broodtide.control.Control;
import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/** By what a beekeeper decides about treatments through a season. */
public sealed interface Rule {
  /** {@return the rule in words} */
  String name();

  /** {@return the controls that it may give, in no order} */
  List<ControlTemplate> controls();

  /**
   * Days after a treatment has ended before its success can be judged by a wash, so that a rule
   * waits before it treats again: what was in capped cells has come out. Choice.
   */
  int SETTLING = 14;

  /** Nothing is ever done. */
  record Never(String name) implements Rule {
    @Override
    public List<ControlTemplate> controls() {
      return List.of();
    }
  }

  /**
   * Treatments on fixed days, whatever washes would show.
   *
   * @param name the rule in words
   * @param treatments what is done when, at least one
   */
  record Calendar(String name, List<Placed> treatments) implements Rule {
    /** Puts the treatments in the order of their days. */
    public Calendar {
      treatments = treatments.stream().sorted(Comparator.comparing(Placed::day)).toList();
      if (treatments.isEmpty()) {
        throw new OutOfRange("treatments", "empty", "at least one");
      }
    }

    @Override
    public List<ControlTemplate> controls() {
      return treatments.stream().map(Placed::control).toList();
    }
  }

  /**
   * A control on a day.
   *
   * @param control the control
   * @param day its first day
   */
  record Placed(ControlTemplate control, LocalDate day) {}

  /**
   * Treat on the day after a wash that reads over a threshold.
   *
   * @param name the rule in words
   * @param perHundred treat when a wash reads over this many mites per 100 bees; empty for the
   *     treatment threshold of the day
   * @param control what is given
   * @param apart days from the start of a treatment in which no other is begun, 1 to 365
   */
  record Threshold(String name, OptionalDouble perHundred, ControlTemplate control, int apart)
      implements Rule {
    /** Checks ranges. */
    public Threshold {
      if (perHundred.isPresent()) {
        OutOfRange.check("threshold", perHundred.getAsDouble(), 0, 100, "mites per 100 bees");
      }
      OutOfRange.check("wait", apart, 1, 365, "days");
    }

    @Override
    public List<ControlTemplate> controls() {
      return List.of(control);
    }
  }

  /**
   * {@return days to wait after the start of a control when the beekeeper does not say}
   *
   * @param control the control
   */
  static int usualWait(ControlTemplate control) {
    LocalDate any = LocalDate.of(2001, 6, 1);
    Control placed = control.at(any);
    return Math.toIntExact(placed.to().toEpochDay() - any.toEpochDay()) + 1 + SETTLING;
  }
}
