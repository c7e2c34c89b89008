/** The bees: rates of brood rearing, ageing and death. */
@NullMarked
package broodtide.colony;

import org.jspecify.annotations.NullMarked;
