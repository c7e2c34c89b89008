/**
 * Pictures. Every picture is a value that implements {@link broodtide.chart.Picture}: what it shows
 * is given as plain numbers, dates and words, so nothing here knows of mites or colonies.
 */
@NullMarked
package broodtide.chart;

import org.jspecify.annotations.NullMarked;
