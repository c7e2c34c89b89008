package broodtide.cli;

import broodtide.report.AnswerPage;
import broodtide.report.AnswerSheet;
import broodtide.report.RunFacts;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;

/** What the pages of all commands have in common. */
final class AnswerFiles {
  /** The page to open first. */
  static final String REPORT = "report.html";

  /** As many names can be read; of more files the pictures are only counted. */
  private static final int MOST_NAMED = 20;

  private AnswerFiles() {}

  /**
   * The page of a command, as a file.
   *
   * @param command the command, whose help says what it answers
   * @param sheets what was said, by colony or of all
   * @param notes what was assumed
   * @param facts how the run was made
   */
  static byte[] page(
      CommandSpec command, List<AnswerSheet> sheets, List<String> notes, RunFacts facts) {
    return new AnswerPage(question(command), sheets, notes, facts)
        .html()
        .getBytes(StandardCharsets.UTF_8);
  }

  /** Says what was written where. */
  static String written(Path folder, Collection<String> names) {
    List<String> shown = new ArrayList<>(names);
    String more = "";
    if (names.size() > MOST_NAMED) {
      shown.removeIf(AnswerFiles::pictured);
      more = " and " + (names.size() - shown.size()) + " pictures";
    }
    return "Written to " + folder + ": " + String.join(", ", shown) + more + ".";
  }

  private static boolean pictured(String name) {
    return name.endsWith(".svg") || name.endsWith(".png");
  }

  /** What a command answers, as its help says, without the full stop. */
  private static String question(CommandSpec command) {
    String header = String.join(" ", command.usageMessage().header());
    return header.endsWith(".") ? header.substring(0, header.length() - 1) : header;
  }
}
