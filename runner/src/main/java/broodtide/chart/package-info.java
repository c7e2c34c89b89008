/**
 * Pictures. Every picture is a value that implements {@link broodtide.chart.Picture}: what it shows
 * is given as plain numbers, dates and words, so nothing here knows of mites or colonies.
 *
 * <p>There are four forms. A {@link broodtide.chart.SeasonChart} is one quantity over the days, a
 * {@link broodtide.chart.ColonyChart} several above one another, a {@link
 * broodtide.chart.WindowMap} a table of start days, and a {@link broodtide.chart.Figure} any other:
 * one framed field or several side by side. Kinds of figure are classes with one method {@code of}
 * that turns figures into fields: {@link broodtide.chart.WashCurve}, {@link
 * broodtide.chart.GrowthPicture}, {@link broodtide.chart.EffectPicture}, {@link
 * broodtide.chart.RuleTradeoff}, {@link broodtide.chart.WorthPicture}, {@link
 * broodtide.chart.ForecastCheck}, {@link broodtide.chart.PriorPosterior}, {@link
 * broodtide.chart.SensitivityBars}, {@link broodtide.chart.ApiaryDots}, {@link
 * broodtide.chart.SeasonInside}.
 *
 * <p>What is drawn from data (lines, bands, steps, bars, dots, cells) is drawn by XChart, through a
 * {@code PlotArea}; words, ticks, labels at line ends, hatching and signs at the edge are set
 * beside it on the same coordinates. Both go to one small canvas with two ends, an SVG with real
 * text that needs no fonts, and a bitmap of two dots per unit.
 *
 * <p>Pictures are immutable and may be shared between threads; the same input gives the same SVG,
 * byte for byte, on any machine.
 */
@NullMarked
package broodtide.chart;

import org.jspecify.annotations.NullMarked;
