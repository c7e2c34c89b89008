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
  /** {@return what it is, as one would say it to a beekeeper} */
  String meaning();

  /** {@return default value, in {@link #unit()}} */
  double value();

  /** {@return unit, for example {@code 1/day}; {@code 1} for a pure number} */
  String unit();

  /** {@return smallest value allowed, inclusive} */
  double min();

  /** {@return largest value allowed, inclusive} */
  double max();

  /** {@return how the default is known} */
  Tag tag();

  /** {@return where the default comes from, or why it was chosen} */
  String source();
}
