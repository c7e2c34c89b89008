package broodtide.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * A run of the script that users start a cluster or a job with.
 *
 * @param script the script
 * @param folder logs, process numbers and marks
 */
record ScriptRun(Process script, Path folder) {
  static final Path MODULE = Path.of(System.getProperty("broodtide.cluster", "."));

  /** Far more than anything here takes on a quiet machine. */
  private static final int MINUTES = 10;

  private static final String SAID = "said.log";
  private static final String PID = ".pid";
  private static final long PAUSE = 20;

  /** A condition that a run comes to. */
  @FunctionalInterface
  interface Reached {
    boolean yet() throws IOException;
  }

  static ScriptRun start(Path folder, String master, List<String> words) throws IOException {
    List<String> call = new ArrayList<>(List.of(MODULE.resolve("local").toString()));
    call.addAll(words);
    ProcessBuilder script =
        new ProcessBuilder(call)
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve(SAID).toFile());
    script.environment().put("WORK_FOLDER", folder.toString());
    script.environment().put("MASTER", master);
    return new ScriptRun(script.start(), folder);
  }

  /** Waits until the script has ended; its exit code. */
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

  /** Waits for something while the script runs. */
  void await(String what, Reached reached) throws IOException, InterruptedException {
    long until = System.nanoTime() + TimeUnit.MINUTES.toNanos(MINUTES);
    while (!reached.yet()) {
      assertThat(script.isAlive()).as(what + ":\n" + said()).isTrue();
      assertThat(System.nanoTime()).as(what).isLessThan(until);
      Thread.sleep(PAUSE);
    }
  }

  /** Waits until so many executors hold a hive. */
  void awaitHeld(int executors) throws IOException, InterruptedException {
    await("executors hold a hive", () -> marks(FaultyJob.WAITS).size() >= executors);
  }

  void letGo() throws IOException {
    Files.createFile(folder.resolve(FaultyJob.GO));
  }

  /** Whether tasks of an executor shared their banks of seasons. */
  void eachExecutorHadOneSetOfBanks() throws IOException {
    Set<String> processes = new HashSet<>();
    List<Path> banks = marks(FaultyJob.SEASONS);
    for (Path bank : banks) {
      processes.add(bank.getFileName().toString().split("-")[1]);
    }
    assertThat(banks).isNotEmpty().hasSameSizeAs(processes);
  }

  /** Ends a process without a chance to put anything in order. */
  void kill(String name) throws IOException {
    process(Files.readString(folder.resolve(name + PID))).orElseThrow().destroyForcibly();
  }

  /**
   * Stops everything.
   *
   * @return processes of the run that lived on, which are killed then
   */
  List<ProcessHandle> stop() throws IOException, InterruptedException {
    script.destroy();
    if (!script.waitFor(MINUTES, TimeUnit.MINUTES)) {
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
    long until = System.nanoTime() + TimeUnit.MINUTES.toNanos(MINUTES);
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
