package broodtide.cluster;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Runs the job within the test's own JVM, and the program of one machine beside it. */
final class JobRun {
  static final LocalDate TODAY = LocalDate.of(2026, 12, 31);

  private JobRun() {}

  /**
   * What came of a run.
   *
   * @param code exit code
   * @param out standard output
   * @param err standard error
   */
  record Outcome(int code, String out, String err) {}

  /** The job on a number of threads, called with words parted by blanks. */
  static Outcome job(int threads, String call) {
    return job(YardWorker.CORE, threads, call.split(" "));
  }

  static Outcome job(HiveWork work, int threads, String... call) {
    System.setProperty("spark.master", "local[" + threads + "]");
    System.setProperty("spark.ui.enabled", "false");
    System.setProperty("spark.driver.host", "127.0.0.1");
    System.setProperty("spark.driver.bindAddress", "127.0.0.1");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code =
        ClusterMain.run(
            work,
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            TODAY,
            call);
    return new Outcome(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  /** The program on one machine, in a JVM of its own. */
  static Outcome program(String call) throws IOException {
    return program(List.of(call.split(" ")));
  }

  static Outcome program(List<String> call) throws IOException {
    String classes =
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
    List<String> words =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                classes,
                "broodtide.cli.Main"));
    words.addAll(call);
    Process program = new ProcessBuilder(words).redirectErrorStream(true).start();
    String said = new String(program.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Outcome(program.onExit().join().exitValue(), said, "");
  }
}
