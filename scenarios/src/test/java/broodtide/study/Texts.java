package broodtide.study;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.forms.Source;
import java.util.List;

/** Texts that several tests read. */
final class Texts {
  /** A study with every required field and little else; each line is one that tests replace. */
  static final String STUDY =
      """
      {
        "title": "t",
        "climate": "temperate",
        "start": "2027-03-01",
        "until": "2027-12-31",
        "colony": {"name": "A", "infestation": 1},
        "plans": [
          {"name": "wait"},
          {"name": "cage", "controls": [
            {"kind": "queen-caging", "from": "2027-07-01", "to": "2027-07-25"}
          ]}
        ]
      }
      """;

  private Texts() {}

  /** The study with one piece of its text replaced by another, which must change it. */
  static String study(String from, String to) {
    String text = STUDY.replace(from, to);
    if (text.equals(STUDY)) {
      throw new IllegalArgumentException("not in the study: " + from);
    }
    return text;
  }

  static Study read(String text) {
    return StudyFile.read(Source.of("s.json", text));
  }

  /** The faults of a text, one line each. */
  static List<String> faults(String text) {
    try {
      read(text);
      return List.of();
    } catch (BadInput bad) {
      return bad.faults().stream().map(Fault::text).toList();
    }
  }
}
