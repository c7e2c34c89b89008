package broodtide.words;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.fit.Agreement;
import java.util.List;
import org.junit.jupiter.api.Test;

class AgreementWordsTest {
  @Test
  void aContradictionIsSaidWithItsCauses() {
    assertThat(AgreementWords.of(new Agreement(List.of(), 0.001)).orElseThrow())
        .contains("do not fit the model")
        .contains("miscount")
        .contains("treatment")
        .contains("Robbing")
        .contains("another kind of frame");
  }

  @Test
  void washesThatAgreeAreNotSpokenOf() {
    assertThat(AgreementWords.of(new Agreement(List.of(), 0.4))).isEmpty();
  }
}
