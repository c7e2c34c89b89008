package broodtide.cli;

import picocli.CommandLine.Model.CommandSpec;

/** What the pages of all commands have in common. */
final class AnswerFiles {
  /** The page to open first. */
  static final String REPORT = "report.html";

  private AnswerFiles() {}

  /** What a command answers, as its help says, without the full stop. */
  static String question(CommandSpec command) {
    String header = String.join(" ", command.usageMessage().header());
    return header.endsWith(".") ? header.substring(0, header.length() - 1) : header;
  }
}
