package broodtide.cluster;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * A cluster of one master and two workers, processes of this machine. Jobs run on it one after the
 * other.
 *
 * @param run the script that holds it
 * @param master its address
 */
record LocalCluster(ScriptRun run, String master) {
  static LocalCluster start(Path folder) throws IOException, InterruptedException {
    ScriptRun run = ScriptRun.start(folder, "", List.of("wait"));
    boolean up = false;
    try {
      run.await("the cluster starts", () -> run.said().endsWith("\n"));
      up = true;
    } finally {
      if (!up) {
        run.stop();
      }
    }
    return new LocalCluster(run, run.said().strip());
  }

  /**
   * Submits the job with something that goes wrong.
   *
   * @param folder logs, process numbers and marks
   * @param call the job's own words, parted by blanks
   */
  ScriptRun submit(Path folder, FaultyJob.Fault fault, String call) throws IOException {
    Path faults;
    try (Stream<Path> jars = Files.list(ScriptRun.MODULE.resolve("target"))) {
      faults = jars.filter(j -> j.toString().endsWith("-tests.jar")).findFirst().orElseThrow();
    }
    List<String> words =
        new ArrayList<>(
            List.of(
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
    return ScriptRun.start(folder, master, words);
  }
}
