/**
 * From several washes of one colony to growth, to what its season looks like inside, and to
 * forecasts that can be marked.
 *
 * <p>There are two ways, and both are kept:
 *
 * <ul>
 *   <li>{@link broodtide.fit.GrowthFit#of} fits counts alone, by a regression on days, and gives
 *       {@link broodtide.fit.Growth} and a {@link broodtide.fit.WashForecast}. It needs no model of
 *       the colony and no climate.
 *   <li>{@link broodtide.fit.SeasonPosterior#of} seeks simulated colonies that could have given the
 *       washes. {@link broodtide.fit.Priors} say what is believed of each unknown before any wash;
 *       {@link broodtide.fit.TemperedSampler} draws; the likelihood of a wash is a negative
 *       binomial about what the daily engine shows. The result is a set of members of equal weight,
 *       ready to be played under any plan.
 * </ul>
 *
 * <p>On a posterior, {@link broodtide.fit.ExpectedWashes} gives the distribution of a wash to come,
 * {@link broodtide.fit.Agreement} says whether washes and model agree, and {@link
 * broodtide.fit.UnknownSummary} what the washes taught of one unknown. {@link
 * broodtide.fit.SharedDraws} is what colonies of a yard share of their season. {@link
 * broodtide.fit.Backtest#run} forecasts each colony's last wash from the earlier ones and compares
 * the forecasts with the simple ones of {@link broodtide.fit.Baselines}.
 *
 * <p>Washes that no colony could have given are refused with {@link broodtide.fit.Unexplained}.
 *
 * <p>Random numbers come from {@link broodtide.fit.Streams}, which are split by purpose and member:
 * the same seed gives the same bytes on any number of threads. Results are immutable and may be
 * shared between threads; a sampler belongs to one thread.
 *
 * @since 0.2.0
 */
@NullMarked
package broodtide.fit;

import org.jspecify.annotations.NullMarked;
