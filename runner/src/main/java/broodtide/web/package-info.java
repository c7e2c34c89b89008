/** A small local web server and what its pages are made of. */
@NullMarked
package broodtide.web;

import org.jspecify.annotations.NullMarked;
