package broodtide.cli;

import broodtide.assessment.ColonyCase;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;

/** Tells runs apart: two of one mark give the same results. */
final class RunMark {
  /** Options that change no result. */
  private static final Set<String> NO_MATTER =
      Set.of("--out", "--json", "--threads", "--png", "--quiet", "--resume", "--each");

  private RunMark() {}

  /** The mark of a run: of its options, of the files that it reads, and of its colonies. */
  static byte[] of(String what, RunOptions run, CaseReader.Cases cases) {
    MessageDigest digest = sha256();
    List<String> words = new ArrayList<>(List.of("hives 1", what, Version.number()));
    words.add(run.seed + " " + run.colonies);
    for (ArgSpec arg : run.command().commandLine().getParseResult().matchedArgs()) {
      String name = arg instanceof OptionSpec option ? option.longestName() : "";
      if (!NO_MATTER.contains(name)) {
        words.add(name + "=" + arg.originalStringValues());
      }
    }
    for (ColonyCase c : cases.cases()) {
      words.add(c.colony() + "|" + c.yard() + "|" + c.start() + "|" + c.now() + "|" + c.until());
      words.add(c.washes().toString());
    }
    words.forEach(w -> digest.update((w + "\n").getBytes(StandardCharsets.UTF_8)));
    List<Path> files = new ArrayList<>(RunOptions.named(run.command()));
    files.addAll(RunOptions.read(cases));
    for (Path file : files) {
      try {
        digest.update(Files.readAllBytes(file));
      } catch (IOException e) {
        throw UserFile.cannotRead(file.toString(), e);
      }
    }
    return digest.digest();
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
