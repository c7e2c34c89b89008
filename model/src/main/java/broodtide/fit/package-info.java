/** From several washes to growth, forecasts and their scores. */
@NullMarked
package broodtide.fit;

import org.jspecify.annotations.NullMarked;
