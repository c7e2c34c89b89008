package broodtide.classroom;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.campaign.Campaign;
import broodtide.study.AnyFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Spoiled samples for every reader of files and for the class page: each is read or answered, or
 * refused in words, and none takes long. {@link AnyFile} and {@link AnyRequest} say what a refusal
 * is.
 */
class AnyInputTest {
  private static final Duration PATIENCE = Duration.ofSeconds(3);

  /** A reader and sound samples for it. */
  private record Reader(List<byte[]> samples, Consumer<byte[]> read) {}

  private final List<Reader> readers = new ArrayList<>();

  AnyInputTest() {
    for (AnyFile kind : AnyFile.values()) {
      readers.add(new Reader(kind.samples(), kind::holds));
    }
    AnyRequest page = new AnyRequest();
    readers.add(
        new Reader(
            AnyRequest.samples().stream().map(s -> s.getBytes(StandardCharsets.UTF_8)).toList(),
            page::answer));
  }

  private static Campaign campaign(Path folder, long seed) {
    return new Campaign("inputs", folder, seed, 500, PATIENCE);
  }

  private void read(long number, SplittableRandom random) {
    Reader reader = readers.get((int) (number % readers.size()));
    reader.read.accept(input(reader.samples, random));
  }

  /** One in twenty is noise, one in ten made of two samples, all others a sample with changes. */
  private static byte[] input(List<byte[]> samples, SplittableRandom random) {
    byte[] bytes = samples.get(random.nextInt(samples.size()));
    int kind = random.nextInt(20);
    if (kind == 0) {
      byte[] noise = new byte[random.nextInt(400)];
      random.nextBytes(noise);
      return noise;
    }
    if (kind <= 2) {
      byte[] other = samples.get(random.nextInt(samples.size()));
      int cut = random.nextInt(bytes.length);
      int from = random.nextInt(other.length);
      byte[] joined = new byte[cut + other.length - from + 1];
      System.arraycopy(bytes, 0, joined, 0, cut);
      System.arraycopy(other, from, joined, cut, other.length - from);
      joined[joined.length - 1] = '\n';
      return joined;
    }
    for (int k = random.nextInt(6); k >= 0; k--) {
      bytes = AnyFile.spoiled(bytes, random);
    }
    return bytes;
  }

  @Test
  void aThousand(@TempDir Path folder) throws Exception {
    assertThat(campaign(folder, 1).run(1_000, this::read)).isEqualTo(1_000);
  }

  @Test
  @Tag("slow")
  void tenThousand(@TempDir Path folder) throws Exception {
    assertThat(campaign(folder, 2).run(10_000, this::read)).isEqualTo(10_000);
  }

  /** DEVELOPERS.md says how to run it, and one case of it. */
  @Test
  @Tag("long")
  void asManyAsAsked() throws Exception {
    Path folder = Path.of(System.getProperty("campaign.folder", "target/campaign"));
    Campaign campaign = campaign(folder, Long.getLong("campaign.seed", 1));
    Long number = Long.getLong("campaign.case");
    if (number != null) {
      campaign.repeat(number, this::read);
    } else {
      campaign.run(Long.getLong("campaign.count", 1_000_000), this::read);
    }
  }
}
