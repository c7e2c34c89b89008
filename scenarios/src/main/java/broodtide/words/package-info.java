/** Words made of figures. */
@NullMarked
package broodtide.words;

import org.jspecify.annotations.NullMarked;
