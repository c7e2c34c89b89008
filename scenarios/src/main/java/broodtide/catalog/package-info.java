/** Shelves of shipped climates, controls and thresholds, and the files of a user's own. */
@NullMarked
package broodtide.catalog;

import org.jspecify.annotations.NullMarked;
