package broodtide.cli;

import picocli.CommandLine;

/** Hands the desk to commands that ask for one in their constructor. */
final class DeskFactory implements CommandLine.IFactory {
  private final Desk desk;

  DeskFactory(Desk desk) {
    this.desk = desk;
  }

  @Override
  public <K> K create(Class<K> type) throws Exception {
    try {
      return type.getDeclaredConstructor(Desk.class).newInstance(desk);
    } catch (NoSuchMethodException e) {
      return CommandLine.defaultFactory().create(type);
    }
  }
}
