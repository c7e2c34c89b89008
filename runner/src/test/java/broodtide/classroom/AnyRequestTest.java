package broodtide.classroom;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Requests with a few letters changed: answered or refused, nothing else. */
class AnyRequestTest {
  private final AnyRequest page = new AnyRequest();

  @Test
  void samplesAreAnswered() {
    AnyRequest.samples()
        .forEach(s -> assertThat(page.answer(s.getBytes(StandardCharsets.UTF_8))).isEqualTo(200));
  }

  @Test
  void changedLetters() {
    SplittableRandom random = new SplittableRandom(20_270_403);
    List<String> samples = AnyRequest.samples();
    int answered = 0;
    int refused = 0;
    for (int i = 0; i < 1500; i++) {
      byte[] bytes = samples.get(i % samples.size()).getBytes(StandardCharsets.UTF_8);
      for (int k = random.nextInt(3); k >= 0; k--) {
        bytes[random.nextInt(bytes.length)] =
            (byte) "/.?&=%-019az:\n \u00e9".charAt(random.nextInt(16));
      }
      int status = page.answer(bytes);
      answered += status == 200 ? 1 : 0;
      refused += status >= 400 ? 1 : 0;
    }
    assertThat(answered).isBetween(20, 1400);
    assertThat(refused).isBetween(20, 1400);
  }
}
