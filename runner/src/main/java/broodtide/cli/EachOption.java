package broodtide.cli;

import picocli.CommandLine.Option;

/** Whether a table of several hives is answered hive by hive. */
final class EachOption {
  @Option(
      names = "--each",
      description = "With several hives: the full answer for each, below the sheet of the apiary.")
  boolean each;
}
