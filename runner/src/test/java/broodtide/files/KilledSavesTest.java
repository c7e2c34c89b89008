package broodtide.files;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.measure.RefusedException;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.StringJoiner;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Saves that are killed at random moments lose nothing: the folder holds one version whole, and the
 * one before it. A few are killed in the usual tests, more in the slow ones, {@code -Dkills=100} of
 * them.
 */
class KilledSavesTest {
  private static final List<String> NAMES = List.of("a.csv", "b.csv");

  @TempDir private Path dir;

  /** Saves version after version until it is killed. */
  public static void main(String[] args) {
    KeptFolder folder = KeptFolder.of(Path.of(args[0]), NAMES);
    KeptFolder.Contents held = folder.read();
    for (long n = number(held); ; n++) {
      held = folder.save(held.version(), version(n + 1));
    }
  }

  private static Map<String, Optional<byte[]>> version(long n) {
    byte[] text = (n + "\n").repeat(2000).getBytes(StandardCharsets.UTF_8);
    return Map.of("a.csv", Optional.of(text), "b.csv", Optional.of(text));
  }

  private static long number(KeptFolder.Contents held) {
    return held.find("a.csv")
        .map(b -> Long.parseLong(new String(b, StandardCharsets.UTF_8).lines().findFirst().get()))
        .orElse(0L);
  }

  @Test
  void nothingIsLost() throws Exception {
    killed(6, 7);
  }

  @Test
  @Tag("slow")
  void nothingIsLostInMany() throws Exception {
    killed(Integer.getInteger("kills", 30), 8);
  }

  private void killed(int kills, long seed) throws Exception {
    Path folder = dir.resolve("hives");
    Random random = new Random(seed);
    long before = 0;
    for (int k = 0; k < kills; k++) {
      Process process =
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-XX:TieredStopAtLevel=1",
                  "-Xshare:auto",
                  "-cp",
                  classPath(),
                  KilledSavesTest.class.getName(),
                  folder.toString())
              .redirectErrorStream(true)
              .redirectOutput(dir.resolve("said").toFile())
              .start();
      long from = before;
      long end = System.nanoTime() + 30_000_000_000L;
      while (seen(folder) <= from && process.isAlive() && System.nanoTime() < end) {
        Thread.sleep(5);
      }
      Thread.sleep(random.nextInt(40));
      assertThat(process.isAlive()).as(Files.readString(dir.resolve("said"))).isTrue();
      process.destroyForcibly().waitFor();
      KeptFolder.Contents held = KeptFolder.of(folder, NAMES).read();
      long now = number(held);
      assertThat(now).isGreaterThan(before);
      for (String name : NAMES) {
        assertThat(held.find(name)).hasValueSatisfying(b -> whole(b, now));
        if (now > 1) {
          assertThat(folder.resolve(KeptFolder.before(name)))
              .satisfies(f -> whole(Files.readAllBytes(f), now - 1));
        }
      }
      try (Stream<Path> all = Files.list(folder)) {
        assertThat(all.map(p -> p.getFileName().toString()))
            .isSubsetOf("a.csv", "b.csv", "a.before.csv", "b.before.csv");
      }
      before = now;
    }
  }

  private static void whole(byte[] content, long n) {
    assertThat(new String(content, StandardCharsets.UTF_8)).isEqualTo((n + "\n").repeat(2000));
  }

  private static long seen(Path folder) throws Exception {
    Path file = folder.resolve("a.csv");
    if (!Files.exists(file)) {
      return 0;
    }
    String text = Files.readString(file);
    return text.isEmpty() ? 0 : Long.parseLong(text.lines().findFirst().orElse("0"));
  }

  /** Where the classes of a save lie; a test's own class path may be behind a manifest. */
  private static String classPath() throws Exception {
    StringJoiner path = new StringJoiner(File.pathSeparator);
    for (Class<?> each :
        List.of(
            KilledSavesTest.class,
            KeptFolder.class,
            RefusedException.class,
            ObjectMapper.class,
            JsonFactory.class,
            JsonProperty.class)) {
      path.add(
          Path.of(each.getProtectionDomain().getCodeSource().getLocation().toURI()).toString());
    }
    return path.toString();
  }
}
