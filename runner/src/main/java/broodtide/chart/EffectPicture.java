package broodtide.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * Whether a treatment worked: the washes before and after with the season as it went and as it
 * would have gone without, and beside it what is believed of the efficacy.
 */
public final class EffectPicture {
  private EffectPicture() {}

  /**
   * {@return the picture}
   *
   * @param heading what stands above
   * @param axis what is drawn, with its unit
   * @param washes washes before and after
   * @param treated the season as it went
   * @param untreated the season without the treatment
   * @param treatment what was done, and when
   * @param efficacy what is believed of the share killed, 0 to 1
   */
  public static Figure of(
      Heading heading,
      String axis,
      List<WashPoint> washes,
      Line treated,
      Line untreated,
      Marker treatment,
      PriorPosterior.Unknown efficacy) {
    List<LocalDate> dates =
        Stream.of(
                washes.stream().map(WashPoint::date),
                treated.estimates().stream().map(Estimate::date),
                untreated.estimates().stream().map(Estimate::date))
            .flatMap(s -> s)
            .sorted()
            .toList();
    LocalDate first = dates.get(0).minusDays(4);
    Axis y = Reach.ratios(axis, List.of(treated, untreated), washes);
    Scale inside = y.scale(0, 1);
    List<Mark> marks = new ArrayList<>();
    double at = treatment.date().toEpochDay() - first.toEpochDay();
    marks.add(Mark.line(at, y.low(), at, y.high(), new Pen(Palette.INK, 1, "1 3")));
    marks.addAll(Estimates.banded(untreated.estimates(), first, Palette.line(1), Palette.dash(1)));
    marks.addAll(Estimates.banded(treated.estimates(), first, Palette.line(0), ""));
    for (WashPoint w : washes) {
      double day = w.date().toEpochDay() - first.toEpochDay();
      Range r = w.interval();
      marks.addAll(
          Mark.upright(
              day,
              inside.inside(w.value()),
              inside.inside(r.low()),
              inside.inside(r.high()),
              Palette.INK,
              new Mark.Group("wash", w.note())));
    }
    Axis x = Axis.days(first, dates.get(dates.size() - 1).plusDays(4));
    List<Facet> facets =
        List.of(
            Facet.of("", x, y, marks, Facet.Words.at(at, y.high(), treatment.label())),
            PriorPosterior.facet(efficacy));
    List<Legend.Sample> key = new ArrayList<>();
    key.add(Legend.Sample.dot(Palette.INK, "wash, 90 % interval"));
    key.add(Legend.Sample.line(Plot.pen(0), treated.name()));
    key.add(Legend.Sample.line(Plot.pen(1), untreated.name()));
    key.addAll(PriorPosterior.key());
    return Figure.of(heading, facets, 2, key, axis + ". " + PriorPosterior.words(efficacy));
  }
}
