package broodtide.cli;

import broodtide.measure.OutOfRange;
import broodtide.web.Browser;
import java.io.IOException;
import java.net.URI;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Option;

/** Where a page of this machine is served, and how it is kept open until Ctrl-C. */
final class PageOptions {
  @Option(
      names = "--port",
      paramLabel = "N",
      description = "Port, 1024 to 65535. Default: one that is free.")
  private int port;

  /** {@return the port, 0 for any that is free} */
  int port() {
    if (port != 0) {
      OutOfRange.check("--port", port, 1024, 65535, "1");
    }
    return port;
  }

  /**
   * Keeps a page open whose address has been printed.
   *
   * @param desk where the address was printed
   * @param address what a browser is shown
   * @param browser whether one is asked
   * @throws Refusal when nobody could read the address
   */
  void keepOpen(CommandContext desk, URI address, boolean browser) throws InterruptedException {
    desk.deliver();
    if (desk.out().checkError()) {
      throw new Refusal(
          "nobody reads standard output, so the address of the page is lost; let it go to a"
              + " terminal or a file");
    }
    if (browser && !Browser.here().show(address)) {
      desk.err().println("No browser could be asked; open the address yourself.");
    }
    new CountDownLatch(1).await();
  }

  /** {@return what is said when the port cannot be had} */
  Refusal notFree(IOException e) {
    return new Refusal(
        "port " + port + " is not free (" + e.getMessage() + "); leave --port out to take any");
  }
}
