package broodtide.measure;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * A numeric record component's default, unit, range, standing and source, in one place. Range
 * checks, study files, the published schema and the parameter table are all read from here, so none
 * of them can drift from the code.
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface Measure {
  /** What it is, as one would say it to a beekeeper. */
  String is();

  /** Default value, in {@link #unit()}. */
  double value();

  /** Unit, for example {@code 1/day}; {@code 1} for a pure number. */
  String unit();

  /** Smallest value allowed, inclusive. */
  double min();

  /** Largest value allowed, inclusive. */
  double max();

  /** How the default is known. */
  Tag tag();

  /** Where the default comes from, or why it was chosen. */
  String source();
}
