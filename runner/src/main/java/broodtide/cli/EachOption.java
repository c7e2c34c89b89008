package broodtide.cli;

import picocli.CommandLine.Option;

/** How a table of several hives is answered. */
final class EachOption {
  @Option(
      names = "--each",
      description = "With several hives: the full answer for each, below the sheet of the apiary.")
  boolean each;

  @Option(
      names = "--resume",
      description =
          "With more than 30 hives: go on where the same command was stopped, with the hives that"
              + " it had not done.")
  boolean resume;
}
