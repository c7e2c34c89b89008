package broodtide.classroom;

import broodtide.web.Query;
import broodtide.web.Refused;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Requests made up by a fuzzer: each is answered or cleanly refused. */
class RequestsFuzzTest {
  private static final String EACH = "5m";
  private static final AnyRequest PAGE = new AnyRequest();

  @MethodSource
  @FuzzTest(maxDuration = EACH)
  void requests(byte[] bytes) {
    PAGE.answer(bytes);
  }

  static Stream<Arguments> requests() {
    return seeds(AnyRequest.samples());
  }

  @MethodSource
  @FuzzTest(maxDuration = EACH)
  void queries(byte[] bytes) {
    try {
      Query.of(new String(bytes, StandardCharsets.ISO_8859_1), List.of("mites", "seed"))
          .number(ExplorerState.MITES);
    } catch (Refused e) {
      // refused is as good as read
    }
  }

  static Stream<Arguments> queries() {
    return seeds(List.of("mites=1.5&seed=4", "mites=%31"));
  }

  private static Stream<Arguments> seeds(List<String> samples) {
    return samples.stream().map(s -> Arguments.of((Object) s.getBytes(StandardCharsets.UTF_8)));
  }
}
