/** Plans side by side: outcomes and their differences. */
@NullMarked
package broodtide.compare;

import org.jspecify.annotations.NullMarked;
