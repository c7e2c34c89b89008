/** What a beekeeper can do against mites, and plans made of it. */
@NullMarked
package broodtide.control;

import org.jspecify.annotations.NullMarked;
