package broodtide.cli;

import picocli.CommandLine;

/** Hands the desk to commands that ask for one in their constructor. */
final class CommandFactory implements CommandLine.IFactory {
  private final CommandContext desk;

  CommandFactory(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public <K> K create(Class<K> type) throws Exception {
    try {
      return type.getDeclaredConstructor(CommandContext.class).newInstance(desk);
    } catch (NoSuchMethodException e) {
      return CommandLine.defaultFactory().create(type);
    }
  }
}
