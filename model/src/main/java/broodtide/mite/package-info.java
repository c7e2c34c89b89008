/** The mites: rates of invasion, reproduction and death, and the closed forms of mites per cell. */
@NullMarked
package broodtide.mite;

import org.jspecify.annotations.NullMarked;
