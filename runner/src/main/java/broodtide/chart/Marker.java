package broodtide.chart;

import java.time.LocalDate;

/**
 * Something done on a day, marked at the top of a chart.
 *
 * @param label a few words, for instance {@code thymol}
 * @param date the day it starts
 */
public record Marker(String label, LocalDate date) {}
