package broodtide.cli;

import broodtide.files.Outputs;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What runs here, and how to tell of a fault. */
@Command(
    name = "about",
    mixinStandardHelpOptions = true,
    header = "Version, files, licence, how to report a fault.",
    description = {
      "Which version runs on which Java, where files are, the licence, the cautions, and how to"
          + " report a fault. With --report it packs the versions, and the files named with --with,"
          + " into a zip that you can look through and send. Nothing is sent by the program."
    },
    footer = {"  broodtide about", "  broodtide about --report fault.zip --with washes.csv"})
final class AboutCommand implements Callable<Integer> {
  /** Bytes of all that may be packed: a beekeeper's tables are far smaller. */
  private static final int MOST = 20_000_000;

  private static final LocalDateTime DATE_IN_ZIP = LocalDateTime.of(2026, 1, 1, 0, 0);

  private final CommandContext desk;

  @Option(
      names = "--report",
      paramLabel = "FILE.zip",
      description = "Packs a report of a fault into this file, which must not exist yet.")
  private @Nullable Path report;

  @Option(
      names = "--with",
      paramLabel = "FILE",
      arity = "1..*",
      description = "Files that the report contains, as they are: your washes, a study.")
  private List<Path> with = new ArrayList<>();

  @Mixin private JsonOption as = new JsonOption();

  AboutCommand(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    Path target = report;
    if (target == null && !with.isEmpty()) {
      throw new Refusal("--with needs --report FILE.zip, the report that the files go into");
    }
    List<Fact> facts = facts();
    if (as.json) {
      ObjectNode json = JsonNodeFactory.instance.objectNode();
      facts.forEach(fact -> json.put(fact.key(), fact.value()));
      desk.out().println(json.toPrettyString());
    } else {
      facts.forEach(fact -> say(fact.line() + "."));
      say("");
      say(
          "Results are estimates, never instructions to treat: the registered label, local law and"
              + " your bee inspector or veterinarian decide. Acids burn skin, eyes and lungs;"
              + " alcohol is flammable; stings can kill people who are allergic.");
      say("");
      say(
          "To report a fault: 'broodtide about --report fault.zip --with washes.csv'"
              + " packs the versions above and the files that you name. Look through the zip"
              + " and take out what you would not tell. Then send it to whoever gave you the"
              + " program. Add the command that you typed and what you expected. Nothing is"
              + " sent by itself.");
    }
    if (target == null) {
      desk.deliver();
      return Main.OK;
    }
    Path name = target.toAbsolutePath().getFileName();
    Path folder = target.toAbsolutePath().getParent();
    if (name == null || folder == null || !name.toString().endsWith(".zip")) {
      throw new Refusal("'" + target + "' is no name of a report; write it like fault.zip");
    }
    if (Files.exists(target)) {
      throw new Refusal(target + " exists already and is left as it is; give another name");
    }
    byte[] packed = pack(facts);
    Outputs outputs = Outputs.handedOver(folder, List.of(name.toString()));
    desk.deliver();
    outputs.write(Map.of(name.toString(), packed));
    if (!as.json) {
      desk.add("Written to " + target + ".");
    }
    return Main.OK;
  }

  /** One thing that is known of this program here. */
  private record Fact(String key, String label, String value) {
    String line() {
      return label + ": " + value;
    }
  }

  private static List<Fact> facts() {
    return List.of(
        new Fact("version", "Version", "broodtide " + Version.number()),
        new Fact(
            "java",
            "Java",
            property("java.version")
                + " ("
                + property("java.vendor")
                + "), in "
                + property("java.home")),
        new Fact(
            "system",
            "System",
            property("os.name") + " " + property("os.version") + ", " + property("os.arch")),
        new Fact(
            "locale",
            "Language and letters",
            Locale.getDefault().toLanguageTag() + ", " + property("sun.jnu.encoding")),
        new Fact(
            "memory",
            "Memory",
            (Runtime.getRuntime().maxMemory() >> 20)
                + " MB at most, "
                + Runtime.getRuntime().availableProcessors()
                + " processors"),
        new Fact("program", "The program", program()),
        new Fact(
            "files",
            "Your files",
            "where you name them; results go to the folder broodtide-out in "
                + Path.of("").toAbsolutePath()
                + ", or where --out says; nothing is kept elsewhere"),
        new Fact("licence", "Licence", "Apache-2.0, in META-INF/LICENSE of the program"));
  }

  private static String property(String name) {
    return System.getProperty(name, "unknown");
  }

  private static String program() {
    CodeSource source = AboutCommand.class.getProtectionDomain().getCodeSource();
    if (source == null) {
      return "unknown";
    }
    URL location = source.getLocation();
    try {
      return Path.of(location.toURI()).toString();
    } catch (URISyntaxException e) {
      return location.toString();
    }
  }

  /** The zip: the versions, then each file under its own name, in the order given. */
  private byte[] pack(List<Fact> facts) {
    Map<String, byte[]> entries = new LinkedHashMap<>();
    String versions = facts.stream().map(fact -> fact.line() + "\n").collect(Collectors.joining());
    entries.put("versions.txt", versions.getBytes(StandardCharsets.UTF_8));
    int room = MOST;
    for (Path file : with) {
      byte[] bytes = UserFile.read(file.toString(), "the file of --with", AboutCommand::start);
      room -= bytes.length;
      if (room < 0) {
        throw new Refusal(
            file + " makes the report larger than 20 MB; leave it out or cut it down");
      }
      if (entries.put("inputs/" + file.getFileName(), bytes) != null) {
        throw new Refusal(
            "two files of --with are called " + file.getFileName() + "; rename one of them");
      }
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      for (Map.Entry<String, byte[]> each : entries.entrySet()) {
        ZipEntry entry = new ZipEntry(each.getKey());
        entry.setTimeLocal(DATE_IN_ZIP);
        zip.putNextEntry(entry);
        zip.write(each.getValue());
        zip.closeEntry();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  private static byte[] start(InputStream in) throws IOException {
    return in.readNBytes(MOST + 1);
  }

  private void say(String text) {
    desk.out().println(desk.terminal().wrap(text));
  }
}
