package broodtide.files;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Map.Entry;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One generation of results: the command that wrote them, and size and SHA-256 of each file. It
 * stands beside them and says which files of the folder are this program's. The same results give
 * the same bytes.
 *
 * @param command the command; empty for files that are handed over to the user, which no manifest
 *     claims afterwards
 * @param files sums by file name
 * @param replaced where the user's own files are saved: sums of those that it takes the place of,
 *     or that go; empty for results
 */
record Manifest(
    String command, SortedMap<String, Sum> files, Optional<SortedMap<String, Sum>> replaced) {
  static final String NAME = "broodtide-files.json";

  private static final int FORMAT = 1;
  private static final ObjectMapper JSON = new ObjectMapper();

  /**
   * By what a file is known again.
   *
   * @param bytes its size
   * @param sha256 its SHA-256 in hexadecimal digits
   */
  record Sum(long bytes, String sha256) {
    static MessageDigest digest() {
      try {
        return MessageDigest.getInstance("SHA-256");
      } catch (NoSuchAlgorithmException e) {
        throw new IllegalStateException("every Java platform has SHA-256", e);
      }
    }

    /** The sum of what a digest has been given. */
    static Sum of(long bytes, MessageDigest digest) {
      return new Sum(bytes, HexFormat.of().formatHex(digest.digest()));
    }

    static Sum of(byte[] content) {
      MessageDigest digest = digest();
      digest.update(content);
      return of(content.length, digest);
    }

    static Sum of(Path file) throws IOException {
      MessageDigest digest = digest();
      try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
        return of(in.transferTo(OutputStream.nullOutputStream()), digest);
      }
    }
  }

  /** The manifest of results. */
  Manifest(String command, SortedMap<String, Sum> files) {
    this(command, files, Optional.empty());
  }

  /** Sums of files at hand. */
  static SortedMap<String, Sum> sums(Map<String, byte[]> contents) {
    SortedMap<String, Sum> sums = new TreeMap<>();
    contents.forEach((name, content) -> sums.put(name, Sum.of(content)));
    return sums;
  }

  /** The manifest of a folder; without files when there is none. */
  static Manifest in(Path folder) throws IOException {
    Path file = folder.resolve(NAME);
    return Files.exists(file, LinkOption.NOFOLLOW_LINKS)
        ? read(file)
        : new Manifest("", new TreeMap<>());
  }

  /**
   * Reads a manifest.
   *
   * @throws OutputRefused when the file is something else
   */
  static Manifest read(Path file) throws IOException {
    JsonNode json;
    try {
      json = Files.isRegularFile(file) ? JSON.readTree(Files.readAllBytes(file)) : null;
    } catch (JsonProcessingException e) {
      json = null;
    }
    if (json == null || json.path("format").asInt() != FORMAT || !json.path("files").isObject()) {
      throw new OutputRefused(
          file,
          "is not this program's list of files and is left as it is; give another folder with"
              + " --out, or move it away");
    }
    Optional<SortedMap<String, Sum>> replaced =
        json.path("replaced").isObject()
            ? Optional.of(sums(json.get("replaced")))
            : Optional.empty();
    return new Manifest(json.path("command").asText(), sums(json.get("files")), replaced);
  }

  private static SortedMap<String, Sum> sums(JsonNode json) {
    SortedMap<String, Sum> files = new TreeMap<>();
    for (Entry<String, JsonNode> f : json.properties()) {
      // A name with folders in it would lead out of this one.
      if (Outputs.isPlain(f.getKey())) {
        JsonNode sum = f.getValue();
        files.put(f.getKey(), new Sum(sum.path("bytes").asLong(-1), sum.path("sha256").asText()));
      }
    }
    return files;
  }

  /** Whether a file is there as this manifest has it: by name, size and sum, and no link. */
  boolean holds(Path file) throws IOException {
    Sum sum = files.get(file.getFileName().toString());
    return sum != null
        && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        && Files.size(file) == sum.bytes()
        && Sum.of(file).equals(sum);
  }

  byte[] json() {
    ObjectNode json = JSON.createObjectNode().put("format", FORMAT).put("command", command);
    put(json.putObject("files"), files);
    replaced.ifPresent(sums -> put(json.putObject("replaced"), sums));
    return (json.toPrettyString().replace("\r", "") + "\n").getBytes(StandardCharsets.UTF_8);
  }

  private static void put(ObjectNode list, SortedMap<String, Sum> sums) {
    sums.forEach(
        (name, sum) -> list.putObject(name).put("bytes", sum.bytes()).put("sha256", sum.sha256()));
  }
}
