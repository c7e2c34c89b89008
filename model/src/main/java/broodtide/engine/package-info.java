/** Two engines over one set of rates: daily cohorts in lanes, and a continuous flow. */
@NullMarked
package broodtide.engine;

import org.jspecify.annotations.NullMarked;
