package broodtide.cli;

import broodtide.catalog.Catalog;
import broodtide.classroom.ClassSite;
import broodtide.page.HivesSite;
import broodtide.web.LocalServer;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.BindException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A local page for one's own hives. */
@Command(
    name = "open",
    mixinStandardHelpOptions = true,
    header = "A page for your own hives, in the browser.",
    description = {
      "A web page for this machine alone: your counts and treatments, how each hive stands, a"
          + " comparison of plans, a report to print. It links to the colony to try and to the"
          + " page for teaching. Nothing leaves the computer.",
      "",
      "FOLDER holds washes.csv, treatments.csv and study.json, which the other commands read too."
          + " Without FOLDER it is the current folder where that holds washes.csv, or else"
          + " broodtide in your home, made when you first save."
    },
    footer = {"  broodtide open", "  broodtide open my-apiary --no-browser"})
final class OpenCommand implements Callable<Integer> {
  private static final String WASHES = "washes.csv";

  /** Above the ports that systems give to connections. */
  private static final int FIRST_PORT = 61000;

  private static final int PORTS = 4500;

  private final CommandContext desk;

  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "FOLDER",
      description = "Folder of your files; it need not exist yet.")
  private @Nullable Path folder;

  @Mixin private PageOptions options = new PageOptions();

  @Option(names = "--no-browser", description = "Only prints the address.")
  private boolean noBrowser;

  @Mixin private JsonOption as = new JsonOption();

  OpenCommand(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() throws InterruptedException {
    int port = options.port();
    Path files = folder();
    if (Files.exists(files) && !Files.isDirectory(files)) {
      throw new Refusal(files + " is a file; give the folder that holds your files");
    }
    Consumer<Throwable> trouble =
        e -> desk.err().println(ProgramFault.line(e, false, List.of("open")));
    String token = HivesSite.token();
    try (HivesSite site =
            new HivesSite(
                new ClassSite(Catalog.climate(ClassCommand.USUAL)),
                files,
                Version.number(),
                desk.clock(),
                trouble);
        LocalServer page = serve(port, files, site, token, trouble)) {
      // What stands behind the sign # stays in the browser, and in no log and no referrer.
      URI address = page.address().resolve("#start=" + token);
      say(address, files);
      options.keepOpen(desk, address, !noBrowser);
    } catch (IOException e) {
      throw options.notFree(e);
    }
    return Main.OK;
  }

  /**
   * Serves the page where an earlier start for the same folder did, if that is free: a browser
   * keeps what was typed and not saved by address.
   */
  private static LocalServer serve(
      int port, Path files, HivesSite site, String token, Consumer<Throwable> trouble)
      throws IOException {
    if (port == 0) {
      int own = FIRST_PORT + Math.floorMod(files.toAbsolutePath().normalize().hashCode(), PORTS);
      try {
        return LocalServer.open(own, site, Optional.of(token), trouble);
      } catch (BindException e) {
        // Somebody else has it; any other does as well, without what was typed before.
        return LocalServer.open(0, site, Optional.of(token), trouble);
      }
    }
    return LocalServer.open(port, site, Optional.of(token), trouble);
  }

  private void say(URI address, Path files) {
    if (as.json) {
      desk.out()
          .println(
              new ObjectMapper()
                  .createObjectNode()
                  .put("address", address.toString())
                  .put("folder", files.toString()));
    } else {
      desk.out().println("Your page is at " + address);
      desk.out().println("Open it in a browser on this machine. Ctrl-C ends it.");
      desk.out().println("Your files: " + files);
    }
  }

  private Path folder() {
    if (folder != null) {
      return folder;
    }
    return Files.isRegularFile(Path.of(WASHES))
        ? Path.of("").toAbsolutePath()
        : Path.of(System.getProperty("user.home", "")).resolve("broodtide");
  }
}
