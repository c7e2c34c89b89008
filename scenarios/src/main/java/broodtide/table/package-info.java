/** Tables of comma-separated values: headers, cells, dates, and faults with their line. */
@NullMarked
package broodtide.table;

import org.jspecify.annotations.NullMarked;
