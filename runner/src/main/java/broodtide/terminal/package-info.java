/** Text and tables on a terminal. */
@NullMarked
package broodtide.terminal;

import org.jspecify.annotations.NullMarked;
