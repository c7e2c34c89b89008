/** What washes and a place say of a colony, and what plans do to it. */
@NullMarked
package broodtide.assessment;

import org.jspecify.annotations.NullMarked;
