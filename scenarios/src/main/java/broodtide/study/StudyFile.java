package broodtide.study;

import broodtide.forms.BadInput;
import broodtide.forms.NeatJson;
import broodtide.forms.Reading;
import broodtide.forms.Source;
import java.nio.file.Path;

/** Studies as JSON, in which {@code //} and {@code /* *}{@code /} comments are allowed. */
public final class StudyFile {
  private StudyFile() {}

  /**
   * Reads a study.
   *
   * @param file a file of studies; washes that it names lie beside it
   * @return the study
   * @throws BadInput with every fault there is
   */
  public static Study read(Path file) {
    return read(Source.of(file));
  }

  /**
   * Reads a study.
   *
   * @param source where the text comes from; its name appears in every fault
   * @return the study
   * @throws BadInput with every fault there is
   */
  public static Study read(Source source) {
    return Reading.whole(source, StudyForm.FORM);
  }

  /**
   * {@return a study as the text of a file} Climates of the library are named; controls are written
   * out in full, so that the file keeps its meaning when the library changes.
   *
   * @param study the study
   */
  public static String write(Study study) {
    return NeatJson.text(StudyForm.FORM.write(study));
  }
}
