package broodtide.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * A cluster of processes on this machine with a faulty job on it, started by the script that users
 * have.
 *
 * @param script the script
 * @param folder logs, process numbers and marks
 */
record LocalCluster(Process script, Path folder) {
  private static final Path MODULE = Path.of(System.getProperty("broodtide.cluster", "."));
  private static final String SAID = "said.log";
  private static final String PID = ".pid";
  private static final int MINUTES = 3;
  private static final int SECONDS = 20;
  private static final long PAUSE = 20;

  static LocalCluster start(Path folder, FaultyJob.Fault fault, String call) throws IOException {
    Path target = MODULE.resolve("target");
    Path faults;
    try (Stream<Path> jars = Files.list(target)) {
      faults = jars.filter(j -> j.toString().endsWith("-tests.jar")).findFirst().orElseThrow();
    }
    List<String> words =
        new ArrayList<>(
            List.of(
                MODULE.resolve("local").toString(),
                "--conf",
                "spark.executor.memory=600m",
                "--conf",
                "spark.executor.extraJavaOptions=-XX:+UseSerialGC -XX:TieredStopAtLevel=1",
                "--jars",
                faults.toString(),
                "--class",
                FaultyJob.class.getName(),
                "--",
                fault.name(),
                folder.toString()));
    words.addAll(List.of(call.split(" ")));
    ProcessBuilder script =
        new ProcessBuilder(words)
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve(SAID).toFile());
    script.environment().put("WORK_FOLDER", folder.toString());
    return new LocalCluster(script.start(), folder);
  }

  /** Waits until the job has ended; its exit code. */
  int code() throws InterruptedException, IOException {
    assertThat(script.waitFor(MINUTES, TimeUnit.MINUTES)).as(said()).isTrue();
    return script.exitValue();
  }

  /** What the user reads. */
  String said() throws IOException {
    return Files.readString(folder.resolve(SAID), StandardCharsets.UTF_8);
  }

  /** What the driver logs. */
  String log() throws IOException {
    return Files.readString(folder.resolve("driver.log"), StandardCharsets.UTF_8);
  }

  /** Waits until so many executors hold a hive. */
  void awaitHeld(int executors) throws IOException, InterruptedException {
    long until = System.nanoTime() + TimeUnit.MINUTES.toNanos(MINUTES);
    while (marks(FaultyJob.WAITS).size() < executors) {
      assertThat(script.isAlive()).as(said()).isTrue();
      assertThat(System.nanoTime()).as("executors did not begin").isLessThan(until);
      Thread.sleep(PAUSE);
    }
  }

  void letGo() throws IOException {
    Files.createFile(folder.resolve(FaultyJob.GO));
  }

  /** Ends a process without a chance to put anything in order. */
  void kill(String name) throws IOException {
    process(Files.readString(folder.resolve(name + PID))).orElseThrow().destroyForcibly();
  }

  /**
   * Stops everything.
   *
   * @return processes of the cluster that lived on, which are killed then
   */
  List<ProcessHandle> stop() throws IOException, InterruptedException {
    script.destroy();
    if (!script.waitFor(SECONDS, TimeUnit.SECONDS)) {
      script.destroyForcibly();
    }
    List<ProcessHandle> all = new ArrayList<>();
    for (Path file : files(f -> f.endsWith(PID))) {
      process(Files.readString(file)).ifPresent(all::add);
    }
    for (Path mark : marks(FaultyJob.AT_WORK)) {
      process(mark.getFileName().toString().substring(FaultyJob.AT_WORK.length()))
          .ifPresent(all::add);
    }
    long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS);
    while (all.stream().anyMatch(ProcessHandle::isAlive) && System.nanoTime() < until) {
      Thread.sleep(PAUSE);
    }
    List<ProcessHandle> left = all.stream().filter(ProcessHandle::isAlive).toList();
    left.forEach(ProcessHandle::destroyForcibly);
    // they point at jars elsewhere, and whoever sweeps the folder would warn of each
    try (Stream<Path> links = Files.list(folder.resolve("spark/jars"))) {
      for (Path link : links.toList()) {
        Files.delete(link);
      }
    }
    return left;
  }

  private static Optional<ProcessHandle> process(String number) {
    return ProcessHandle.of(Long.parseLong(number.strip()));
  }

  private List<Path> marks(String beginning) throws IOException {
    return files(name -> name.startsWith(beginning));
  }

  private List<Path> files(Predicate<String> name) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> name.test(f.getFileName().toString())).toList();
    }
  }
}
