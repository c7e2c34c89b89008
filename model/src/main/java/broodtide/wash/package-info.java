/** Washes: counts of mites in samples of bees, and what one count says. */
@NullMarked
package broodtide.wash;

import org.jspecify.annotations.NullMarked;
