package broodtide.study;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.stream.Stream;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Reads files made up by a fuzzer: each is read or cleanly refused. */
class FilesFuzzTest {
  private static final String EACH = "5m";

  @MethodSource
  @FuzzTest(maxDuration = EACH)
  void washes(byte[] bytes) {
    AnyFile.WASHES.holds(bytes);
  }

  static Stream<Arguments> washes() {
    return seeds(AnyFile.WASHES);
  }

  @MethodSource
  @FuzzTest(maxDuration = EACH)
  void treatments(byte[] bytes) {
    AnyFile.TREATMENTS.holds(bytes);
  }

  static Stream<Arguments> treatments() {
    return seeds(AnyFile.TREATMENTS);
  }

  @MethodSource
  @FuzzTest(maxDuration = EACH)
  void study(byte[] bytes) {
    AnyFile.STUDY.holds(bytes);
  }

  static Stream<Arguments> study() {
    return seeds(AnyFile.STUDY);
  }

  @MethodSource
  @FuzzTest(maxDuration = EACH)
  void climate(byte[] bytes) {
    AnyFile.CLIMATE.holds(bytes);
  }

  static Stream<Arguments> climate() {
    return seeds(AnyFile.CLIMATE);
  }

  @MethodSource
  @FuzzTest(maxDuration = EACH)
  void control(byte[] bytes) {
    AnyFile.CONTROL.holds(bytes);
  }

  static Stream<Arguments> control() {
    return seeds(AnyFile.CONTROL);
  }

  @MethodSource
  @FuzzTest(maxDuration = EACH)
  void thresholds(byte[] bytes) {
    AnyFile.THRESHOLDS.holds(bytes);
  }

  static Stream<Arguments> thresholds() {
    return seeds(AnyFile.THRESHOLDS);
  }

  @MethodSource
  @FuzzTest(maxDuration = EACH)
  void lesson(byte[] bytes) {
    AnyFile.LESSON.holds(bytes);
  }

  static Stream<Arguments> lesson() {
    return seeds(AnyFile.LESSON);
  }

  private static Stream<Arguments> seeds(AnyFile kind) {
    return kind.samples().stream().map(bytes -> Arguments.of((Object) bytes));
  }
}
