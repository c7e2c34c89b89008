package broodtide.chart;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One quantity over a season: lines with bands, washes, a threshold, and what happens in the year.
 *
 * <p>Lines are named at their ends; from seven lines on, and in narrow pictures, in a key.
 *
 * @param heading title and subtitle
 * @param panel what is drawn
 * @param almanac spans, markers and today
 * @param size picture size
 */
public record SeasonChart(Heading heading, Panel panel, Almanac almanac, Size size)
    implements Picture {
  /**
   * {@return lines on a linear axis, for a page}
   *
   * @param heading what stands above
   * @param axis what is drawn, with its unit
   * @param lines the lines, the main one first
   */
  public static SeasonChart of(Heading heading, String axis, List<Line> lines) {
    return new SeasonChart(heading, Panel.of(axis, lines), Almanac.BLANK, Size.PAGE);
  }

  /**
   * {@return the same chart with washes}
   *
   * @param taken the washes, drawn as dots with their ranges
   */
  public SeasonChart washes(List<WashPoint> taken) {
    return with(new Panel(panel.axis(), panel.log(), panel.lines(), taken, panel.threshold()));
  }

  /**
   * {@return the same chart with a threshold}
   *
   * @param threshold the threshold of each day; null for none
   */
  public SeasonChart threshold(@Nullable ThresholdSteps threshold) {
    return with(new Panel(panel.axis(), panel.log(), panel.lines(), panel.washes(), threshold));
  }

  /** {@return the same chart with a logarithmic axis} */
  public SeasonChart logarithmic() {
    return with(new Panel(panel.axis(), true, panel.lines(), panel.washes(), panel.threshold()));
  }

  /**
   * {@return the same chart with spans, markers and today}
   *
   * @param other spans and marked days
   */
  public SeasonChart almanac(Almanac other) {
    return new SeasonChart(heading, panel, other, size);
  }

  @Override
  public SeasonChart sized(Size other) {
    return new SeasonChart(heading, panel, almanac, other);
  }

  @Override
  public Size drawn() {
    return stack().size();
  }

  @Override
  public String description() {
    return panel.words();
  }

  @Override
  public void paint(Canvas canvas) {
    stack().paint(canvas);
  }

  private PanelStack stack() {
    return new PanelStack(heading, List.of(panel), almanac, size);
  }

  private SeasonChart with(Panel other) {
    return new SeasonChart(heading, other, almanac, size);
  }
}
