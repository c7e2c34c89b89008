package broodtide.cli;

import picocli.CommandLine.Option;

/** The one switch that every command has. */
final class JsonOption {
  @Option(names = "--json", description = "Print the result as JSON instead of text.")
  boolean json;
}
