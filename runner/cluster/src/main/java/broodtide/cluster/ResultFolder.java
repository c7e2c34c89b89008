package broodtide.cluster;

import broodtide.measure.RefusedException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;

/**
 * The folder of a job's results, on whatever file system the cluster has. Tables are staged in a
 * hidden folder within it; its manifest, written last, makes the stage whole. Only then do they
 * take the place of the last run's. A stage that a dead run left is moved into place when it is
 * whole, and thrown away when it is not. Nothing that the manifest does not name is replaced.
 */
final class ResultFolder {
  static final String FORMAT = "broodtide-cluster-1";
  static final String MANIFEST = "broodtide-cluster.json";
  static final String STAGE = ".broodtide-stage";

  private static final ObjectMapper JSON =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);
  private static final String FILES = "files";

  private final FileSystem system;
  private final Path folder;
  private final Path stage;

  private ResultFolder(FileSystem system, Path folder) {
    this.system = system;
    this.folder = folder;
    this.stage = new Path(folder, STAGE);
  }

  /**
   * Chooses a folder before any work is done.
   *
   * @throws RefusedException when it holds anything that such a job did not write
   * @throws IOException when the file system fails
   */
  static ResultFolder claim(String folder, Configuration configuration) throws IOException {
    Path path = new Path(folder);
    FileSystem system = path.getFileSystem(configuration);
    system.setWriteChecksum(false);
    ResultFolder out = new ResultFolder(system, system.makeQualified(path));
    out.claim();
    return out;
  }

  private void claim() throws IOException {
    if (system.exists(folder) && !system.getFileStatus(folder).isDirectory()) {
      throw refused("a file of this name is in the way");
    }
    if (system.exists(new Path(stage, MANIFEST))) {
      moveIntoPlace();
    }
    sweep();
    Map<String, Long> own = files(new Path(folder, MANIFEST));
    if (system.exists(folder)) {
      for (FileStatus found : system.listStatus(folder)) {
        String name = found.getPath().getName();
        if (name.equals(MANIFEST)) {
          continue;
        }
        Long bytes = own.get(name);
        if (bytes == null) {
          throw refused("it holds " + name + ", which this job did not write");
        }
        if (bytes != bytes(found.getPath())) {
          throw refused(name + " was changed since it was written");
        }
      }
    }
  }

  private RefusedException refused(String why) {
    return new RefusedException(
        "--out " + folder + ": " + why + "; give another folder, or move it away");
  }

  private long bytes(Path path) throws IOException {
    return system.getContentSummary(path).getLength();
  }

  /** Where a table is staged. */
  Path staged(String name) {
    return new Path(stage, name);
  }

  /** Opens a staged file. */
  OutputStream open(String name) throws IOException {
    return system.create(staged(name), true);
  }

  /** Throws away what is staged. */
  void sweep() throws IOException {
    system.delete(stage, true);
  }

  /** Throws away one staged thing. */
  void discard(String name) throws IOException {
    system.delete(staged(name), true);
  }

  /**
   * Makes what is staged the results.
   *
   * @param facts what the manifest says of the run
   */
  void publish(ObjectNode facts) throws IOException {
    ArrayNode files = facts.putArray(FILES);
    Map<String, Long> staged = new TreeMap<>();
    for (FileStatus each : system.listStatus(stage)) {
      staged.put(each.getPath().getName(), bytes(each.getPath()));
    }
    staged.forEach((name, bytes) -> files.addObject().put("name", name).put("bytes", bytes));
    Path half = staged(MANIFEST + ".half");
    try (OutputStream out = system.create(half, true)) {
      out.write((JSON.writeValueAsString(facts) + "\n").getBytes(StandardCharsets.UTF_8));
    }
    rename(half, staged(MANIFEST));
    moveIntoPlace();
  }

  /** An empty manifest. */
  static ObjectNode facts() {
    return JSON.createObjectNode().put("format", FORMAT);
  }

  private void moveIntoPlace() throws IOException {
    Map<String, Long> next = files(new Path(stage, MANIFEST));
    for (String old : files(new Path(folder, MANIFEST)).keySet()) {
      if (!next.containsKey(old)) {
        system.delete(new Path(folder, old), true);
      }
    }
    for (String name : next.keySet()) {
      if (system.exists(staged(name))) {
        system.delete(new Path(folder, name), true);
        rename(staged(name), new Path(folder, name));
      }
    }
    system.delete(new Path(folder, MANIFEST), false);
    rename(staged(MANIFEST), new Path(folder, MANIFEST));
    sweep();
  }

  private void rename(Path from, Path to) throws IOException {
    if (!system.rename(from, to)) {
      throw new IOException(from + " cannot be moved to " + to);
    }
  }

  /** Size by name, of the files that a manifest names; none where there is no manifest. */
  private Map<String, Long> files(Path manifest) throws IOException {
    Map<String, Long> files = new TreeMap<>();
    if (system.exists(manifest)) {
      try (InputStream in = system.open(manifest)) {
        JsonNode root = JSON.readTree(in);
        if (!root.path("format").asText().equals(FORMAT)) {
          throw refused(MANIFEST + " is not of this job");
        }
        root.path(FILES).forEach(f -> files.put(f.path("name").asText(), f.path("bytes").asLong()));
      }
    }
    return files;
  }
}
