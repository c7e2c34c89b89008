package broodtide.report;

import broodtide.assessment.ColonyCase;
import broodtide.control.Control;
import broodtide.engine.Wintering;
import broodtide.measure.Tag;
import broodtide.mite.Immigration;
import broodtide.season.YearSpan;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import broodtide.wash.WashMethod;
import broodtide.words.Digits;
import broodtide.words.Plain;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What the figures rest on. Colonies of one run share it, but for what was done to each. */
record AssumedSection(List<PagePart> parts, List<String> notes) {
  void write(HtmlWriter h) {
    h.open("section").element("h2", "What is assumed").open("ul");
    Set<String> lines = new LinkedHashSet<>();
    for (PagePart part : parts) {
      ColonyCase c = part.colony();
      lines.add(climate(c));
      lines.add(arrivals(c));
      lines.add(thresholds(c.thresholds()));
      lines.add(done(c));
      lines.add(decision(c));
    }
    lines.add(
        "Treatment thresholds are counts of washes, which find about "
            + Digits.percent(WashMethod.ALCOHOL.recovery().mean())
            + " of the mites. The forecasts count all mites on adult bees, so a wash would show a"
            + " little less.");
    lines.addAll(methods());
    lines.add(
        "Each simulated colony counts as much as it is likely to be alive: half survive at "
            + Digits.count(Math.round(Wintering.defaults().fewestBees()))
            + " bees, with a wide spread between yards and winters. Infestations are those of"
            + " living colonies.");
    if (parts.stream().anyMatch(PagePart::winters)) {
      lines.add(
          "Winter losses were fitted to untreated colonies in Georgia, USA (Bartlett et al. 2024),"
              + " and to yards in Vermont in 2021 (from memory, no author known). About "
              + Digits.percent(Wintering.defaults().otherLosses())
              + " of a typical yard die from causes other than mites (90 % of yards: 1.5 to 44 %)."
              + " Survival of heavily infested colonies in cold places is overstated.");
    }
    lines.add(
        "Every season runs by the usual calendar of the climate. A late spring, a failed flow, a"
            + " swarm or a lost queen is not foreseen.");
    lines.addAll(notes);
    lines.forEach(line -> h.element("li", line));
    h.close().close();
  }

  private static String climate(ColonyCase c) {
    var climate = c.model().climate();
    return "Climate: \u201c"
        + climate.title()
        + "\u201d ("
        + climate.name()
        + "), with honey supers on "
        + span(climate.supers())
        + ", winter bees raised "
        + span(climate.winterBees())
        + ".";
  }

  private static String span(YearSpan span) {
    return Plain.day(span.from()) + " to " + Plain.day(span.to());
  }

  private static String arrivals(ColonyCase c) {
    List<Immigration.Window> windows = c.model().immigration().windows();
    return windows.isEmpty()
        ? "No mites arrive from other colonies."
        : "Mites that arrive from other colonies: "
            + windows.stream()
                .map(w -> Digits.two(w.perDay()) + " a day, " + span(w.span()))
                .collect(Collectors.joining("; "))
            + ", with the uncertainty shown above.";
  }

  private static String thresholds(ThresholdSet set) {
    return "Treatment threshold: \u201c"
        + set.title()
        + "\u201d ("
        + set.name()
        + "; "
        + set.region()
        + "), "
        + known(set.tag())
        + ". Source: "
        + set.source()
        + ". On days that it does not name there is no threshold. Published thresholds for July"
        + " differ threefold.";
  }

  private static String known(Tag tag) {
    return switch (tag) {
      case SEEN -> "seen in its source";
      case DATA -> "computed from open data";
      case DERIVED -> "calculated from its source";
      case MEMORY -> "from memory, not checked against a source";
      case CHOICE -> "a choice";
    };
  }

  private String done(ColonyCase c) {
    String whose = parts.size() > 1 ? "Colony " + c.colony() + ": " : "";
    String what = c.given().stream().map(AssumedSection::dated).collect(Collectors.joining("; "));
    return what.isEmpty()
        ? "Nothing was done against mites between the first wash and the last, as far as the record"
            + " says."
        : whose + "Treatments so far: " + what + ".";
  }

  private static String dated(Control control) {
    return control.name()
        + ", "
        + Plain.day(control.from())
        + (control.to().equals(control.from()) ? "" : " to " + Plain.day(control.to()));
  }

  private String decision(ColonyCase c) {
    boolean alike =
        parts.stream()
            .map(PagePart::colony)
            .allMatch(p -> p.now().equals(c.now()) && p.until().equals(c.until()));
    String whose = alike ? "" : " for colony " + c.colony();
    return "The decision date"
        + whose
        + ", \u201ctoday\u201d in the chart, is "
        + Plain.day(c.now())
        + (c.washes().isEmpty() && c.boards().isEmpty() ? ", the first day of the study" : "")
        + ". The forecast ends on "
        + Plain.day(c.until())
        + ".";
  }

  private List<String> methods() {
    Set<WashMethod> used = new TreeSet<>();
    for (PagePart part : parts) {
      part.colony().washes().stream().map(Wash::method).forEach(used::add);
    }
    List<String> out = new ArrayList<>();
    for (WashMethod m : used) {
      out.add(
          "Washing by "
              + m.id().replace('-', ' ')
              + " is assumed to find "
              + Digits.percent(m.recovery().mean())
              + " of the mites ("
              + m.recovery().source()
              + ").");
    }
    return out;
  }
}
