/** Windows, rules, the worth of another wash, and whether a treatment worked. */
@NullMarked
package broodtide.decision;

import org.jspecify.annotations.NullMarked;
