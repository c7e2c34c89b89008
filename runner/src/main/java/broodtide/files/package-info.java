/** Safe files: results that are there whole or not at all. */
@NullMarked
package broodtide.files;

import org.jspecify.annotations.NullMarked;
