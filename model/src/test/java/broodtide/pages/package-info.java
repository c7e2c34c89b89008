/** Parts of the committed pages that are written from code, and tests that hold them to it. */
@NullMarked
package broodtide.pages;

import org.jspecify.annotations.NullMarked;
