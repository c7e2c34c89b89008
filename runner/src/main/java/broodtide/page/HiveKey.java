package broodtide.page;

import broodtide.assessment.ColonyCase;
import broodtide.control.Control;
import broodtide.study.Study;
import broodtide.study.StudyFile;
import broodtide.wash.BoardCount;
import broodtide.wash.Wash;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.List;

/**
 * All that what is known of a hive hangs on: its place, days, washes and treatments. Plans are not
 * in it, so that a plan more leaves what was worked out in force.
 *
 * @param place the study without its plans and days
 * @param colony name of the hive
 * @param yard its yard
 * @param start first day that is followed
 * @param now the decision date
 * @param until last day that is looked at
 * @param washes its washes
 * @param given its treatments
 * @param boards its boards
 */
record HiveKey(
    String place,
    String colony,
    String yard,
    LocalDate start,
    LocalDate now,
    LocalDate until,
    List<Wash> washes,
    List<Control> given,
    List<BoardCount> boards) {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final List<String> LEFT_OUT = List.of("title", "start", "until", "plans");

  static HiveKey of(String place, ColonyCase c) {
    return new HiveKey(
        place,
        c.colony(),
        c.yard(),
        c.start(),
        c.now(),
        c.until(),
        c.washes(),
        c.given(),
        c.boards());
  }

  /** {@return what a study says of the place, as text} */
  static String place(Study study) {
    try {
      ObjectNode all = (ObjectNode) JSON.readTree(StudyFile.write(study));
      return all.remove(LEFT_OUT).toString();
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a study is written as JSON", e);
    }
  }
}
