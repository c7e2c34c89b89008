package broodtide.study;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.ClimateFile;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.ControlTemplateFile;
import broodtide.catalog.ThresholdFile;
import broodtide.forms.BadInput;
import broodtide.forms.Source;
import broodtide.lesson.LessonFile;
import broodtide.season.Climate;
import broodtide.wash.ThresholdSet;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.stream.Stream;

/** Kinds of files that users bring, sound samples of them, and ways to spoil these. */
public enum AnyFile {
  WASHES("larkmeadow.csv") {
    @Override
    void read(byte[] bytes) throws IOException {
      WashFile file = WashFile.read(new ByteArrayInputStream(bytes), "any", TODAY);
      assertThat(file.byColony()).isNotEmpty();
    }

    @Override
    List<String> further() {
      return List.of(
          "sep=;\nDatum;colony;date;mites;bees;frames of bees\n;A;3.4.2025;1;300;7,5\n",
          "# remark\n"
              + "date\tcolony\tmites\tbees\tmethod\tframe\n"
              + "25/12/2024\tA\t0\t\tsoapy water\thoney",
          "\uFEFFdate,colony,mites,bees,note\n45000,\"A \"\"x\"\"\n\",9,300,\"a,b\"\r\n");
    }
  },
  TREATMENTS {
    @Override
    void read(byte[] bytes) throws IOException {
      TreatmentFile file = TreatmentFile.read(new ByteArrayInputStream(bytes), "any", TODAY);
      assertThat(file.of("A")).isNotNull();
      assertThat(file.unused(Set.of("A"))).isNotNull();
    }

    @Override
    List<String> further() {
      return List.of(
          "date,colony,control,applications,every\n2025-08-10,A,thymol,2,21\n",
          "date;colony;control;days without laying\n"
              + "1.6.2025;*;split;21\n"
              + "1.7.2025;A;queen caging;\n");
    }
  },
  STUDY("late-wash.json", "southern-year.json") {
    @Override
    void read(byte[] bytes) {
      Study study = StudyFile.read(text(bytes));
      assertThat(study.scenarios()).isNotEmpty();
      study.member(1);
      assertThat(StudyFile.write(study)).isNotBlank();
    }
  },
  CLIMATE("boreal.json", "subtropical.json") {
    @Override
    void read(byte[] bytes) {
      Climate climate = ClimateFile.read(text(bytes));
      assertThat(climate.inSouth().supers()).isNotNull();
      assertThat(ClimateFile.write(climate)).isNotBlank();
    }
  },
  CONTROL("thymol.json", "split.json", "requeening.json", "drone-comb.json", "queen-caging.json") {
    @Override
    void read(byte[] bytes) {
      ControlTemplate control = ControlTemplateFile.read(text(bytes));
      assertThat(control.at(TODAY).from()).isEqualTo(TODAY);
    }
  },
  THRESHOLDS("kulhanek-2021.json", "gds-france-2026.json", "strange-sheppard-2001.json") {
    @Override
    void read(byte[] bytes) {
      ThresholdSet set = ThresholdFile.read(text(bytes));
      assertThat(set.thresholds()).isNotEmpty();
      assertThat(ThresholdFile.write(set)).isNotBlank();
    }
  },
  LESSON("one-wash.json", "doubling.json", "spring-count.json") {
    @Override
    void read(byte[] bytes) {
      assertThat(LessonFile.read(text(bytes)).lines()).isNotEmpty();
    }
  };

  private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);

  private final List<String> shipped;

  AnyFile(String... shipped) {
    this.shipped = List.of(shipped);
  }

  /**
   * Reads a file of this kind and uses what was read.
   *
   * @throws BadInput when it cannot be used
   */
  abstract void read(byte[] bytes) throws IOException;

  /** Samples beyond those of the library. */
  List<String> further() {
    return List.of();
  }

  /** {@return whether bytes were read; not being read means one clean refusal} */
  public boolean holds(byte[] bytes) {
    try {
      read(bytes);
      return true;
    } catch (BadInput bad) {
      assertThat(bad.faults()).isNotEmpty();
      assertThat(bad.getMessage()).doesNotContain("REDACTED", "Exception", "broodtide.", "java.");
      return false;
    } catch (IOException e) {
      throw new UncheckedIOException("bytes in memory cannot fail to be read", e);
    }
  }

  /** {@return sound files of this kind} */
  public List<byte[]> samples() {
    return Stream.concat(
            shipped.stream().map(AnyFile::load),
            further().stream().map(s -> s.getBytes(StandardCharsets.UTF_8)))
        .toList();
  }

  private static byte[] load(String file) {
    Function<String, InputStream> open = f -> AnyFile.class.getResourceAsStream("/library/" + f);
    try (InputStream in =
        Stream.of("studies/", "climates/", "controls/", "thresholds/", "lessons/")
            .map(folder -> open.apply(folder + file))
            .filter(Objects::nonNull)
            .findFirst()
            .orElseThrow()) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Source text(byte[] bytes) {
    return Source.of("any.json", new String(bytes, StandardCharsets.UTF_8));
  }

  /** One small change: a stretch of bytes taken out, replaced, or written over by another. */
  public static byte[] spoiled(byte[] bytes, SplittableRandom random) {
    int at = random.nextInt(bytes.length);
    int length = Math.min(bytes.length - at, 1 + random.nextInt(12));
    byte[] put =
        switch (random.nextInt(4)) {
          case 0 -> new byte[0];
          case 1 -> new byte[] {(byte) random.nextInt(256)};
          case 2 ->
              "{}[],:;\"\\ 9-.eE/*\n\t"
                  .substring(random.nextInt(19))
                  .getBytes(StandardCharsets.UTF_8);
          default -> Arrays.copyOfRange(bytes, 0, at);
        };
    byte[] out = new byte[bytes.length - length + put.length];
    System.arraycopy(bytes, 0, out, 0, at);
    System.arraycopy(put, 0, out, at, put.length);
    System.arraycopy(bytes, at + length, out, at + put.length, bytes.length - at - length);
    return out.length == 0 ? new byte[] {' '} : out;
  }
}
