/** Measured values as code carries them: value, unit, range, how it is known, and its source. */
@NullMarked
package broodtide.measure;

import org.jspecify.annotations.NullMarked;
