package broodtide.bench;

import broodtide.study.Study;
import broodtide.study.StudyFile;
import broodtide.study.WashFile;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** Large files: a table of 100,000 washes, and a study of fifty plans of twenty controls. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(1)
public class ReadingBench {
  private static final int WASHES = 100_000;
  private static final int PLANS = 49;
  private static final int CONTROLS = 20;
  private static final LocalDate FIRST = LocalDate.of(2020, 4, 1);
  private static final LocalDate TODAY = LocalDate.of(2026, 8, 1);

  private String washes = "";
  private Path study = Path.of("");

  /** Writes both texts. */
  @Setup
  public void write() throws IOException {
    washes = washes();
    study = Files.writeString(Files.createTempFile("study", ".json"), study());
  }

  /** Deletes the study. */
  @TearDown
  public void delete() throws IOException {
    Files.delete(study);
  }

  private static String washes() {
    SplittableRandom random = new SplittableRandom(3);
    StringBuilder text = new StringBuilder("date,colony,mites,bees\n");
    for (int i = 0; i < WASHES; i++) {
      text.append(FIRST.plusDays(30L * (i % 70))).append(",Hive ").append(i / 70).append(',');
      text.append(random.nextInt(30)).append(',').append(random.nextInt(250, 350)).append('\n');
    }
    return text.toString();
  }

  private static String study() {
    StringBuilder text =
        new StringBuilder(
            """
            {"title": "large", "climate": "temperate", "threshold": "kulhanek-2021",
             "start": "2026-04-01", "until": "2027-03-31",
             "colony": {"name": "A", "framesOfBees": 8, "infestation": 1},
             "plans": [{"name": "wait"}\
            """);
    for (int i = 0; i < PLANS; i++) {
      text.append(",\n  {\"name\": \"plan ").append(i).append("\", \"controls\": [");
      for (int c = 0; c < CONTROLS; c++) {
        LocalDate day = LocalDate.of(2026, 7, 1).plusDays(i + 10L * c);
        text.append(c == 0 ? "" : ",\n    ");
        text.append("{\"use\": \"oxalic-vapour\", \"start\": \"").append(day).append("\"}");
      }
      text.append("]}");
    }
    return text.append("]}\n").toString();
  }

  /** Milliseconds to read and check 100,000 washes. */
  @Benchmark
  public WashFile table() throws IOException {
    return WashFile.read(new StringReader(washes), "washes.csv", TODAY);
  }

  /** Milliseconds to read and check a study of fifty plans. */
  @Benchmark
  public Study plans() {
    return StudyFile.read(study);
  }
}
