/** The class page: a local web page on which a club class plays colonies and predicts first. */
@NullMarked
package broodtide.classroom;

import org.jspecify.annotations.NullMarked;
