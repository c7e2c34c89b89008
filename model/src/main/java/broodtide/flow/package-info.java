/** The differential equations of the same colony, a peer that the daily engine is held to. */
@NullMarked
package broodtide.flow;

import org.jspecify.annotations.NullMarked;
