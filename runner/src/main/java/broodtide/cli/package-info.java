/** The command line. */
@NullMarked
package broodtide.cli;

import org.jspecify.annotations.NullMarked;
