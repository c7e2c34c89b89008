/** Results as JSON. */
@NullMarked
package broodtide.results;

import org.jspecify.annotations.NullMarked;
