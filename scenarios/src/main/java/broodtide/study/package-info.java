/** Studies, washes and the shipped library as files. */
@NullMarked
package broodtide.study;

import org.jspecify.annotations.NullMarked;
