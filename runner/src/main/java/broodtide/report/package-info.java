/** Charts and tables that a beekeeper reads. */
@NullMarked
package broodtide.report;

import org.jspecify.annotations.NullMarked;
