/** The year: curves over the day of year, spans of days, and climates. */
@NullMarked
package broodtide.season;

import org.jspecify.annotations.NullMarked;
