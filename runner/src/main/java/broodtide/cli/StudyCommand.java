package broodtide.cli;

import broodtide.report.Outputs;
import broodtide.study.Library;
import broodtide.study.Study;
import broodtide.study.StudySchema;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Studies as files. */
@Command(
    name = "study",
    mixinStandardHelpOptions = true,
    description = {
      "Studies: a colony, its place, what was done and the plans, in one JSON file.",
      "",
      "Examples:",
      "  broodtide study new my-apiary",
      "  broodtide study check my-apiary/study.json",
      "  broodtide study schema > study-schema.json",
      ""
    })
final class StudyCommand implements Runnable {
  private static final String STARTER = "larkmeadow";

  private final Desk desk;
  @Spec private CommandSpec spec;

  StudyCommand(Desk desk) {
    this.desk = desk;
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Say what to do: new, check or schema.");
  }

  @Command(
      name = "new",
      mixinStandardHelpOptions = true,
      description = "Writes a commented study, a table of washes and a note what to edit.")
  int create(@Parameters(paramLabel = "DIR", description = "Folder to write into.") Path folder) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    String study = Library.find(Library.Shelf.STUDIES, STARTER).text();
    files.put("study.json", bytes(study.replace(STARTER + ".csv", "washes.csv")));
    files.put("washes.csv", bytes(shipped("/library/studies/" + STARTER + ".csv")));
    files.put("WHAT-TO-EDIT.txt", bytes(shipped("/starter/WHAT-TO-EDIT.txt")));
    for (String name : files.keySet()) {
      if (Files.exists(folder.resolve(name))) {
        throw new Refusal(
            folder.resolve(name) + " exists already and is left as it is; give another folder");
      }
    }
    Outputs.into(folder).write(files);
    say("Written to " + folder + ": " + String.join(", ", files.keySet()) + ".");
    say("Next: broodtide compare --study " + folder.resolve("study.json"));
    return Main.OK;
  }

  @Command(
      name = "check",
      mixinStandardHelpOptions = true,
      description = "Lists every fault of a study and of its washes at once.")
  int check(@Parameters(paramLabel = "FILE", description = "The study.") String file) {
    Study study = Library.study(file);
    ColonyOptions options = new ColonyOptions();
    options.study = file;
    CaseReader.Cases cases = new CaseReader(desk, options).read(CaseReader.Horizon::winterBees);
    say(
        file
            + " is sound: \""
            + study.title()
            + "\", "
            + study.start()
            + " to "
            + study.until()
            + ", "
            + cases.cases().get(0).washes().size()
            + " washes, "
            + study.plans().size()
            + " plans.");
    return Main.OK;
  }

  @Command(
      name = "schema",
      mixinStandardHelpOptions = true,
      description = "Prints the JSON Schema of studies.")
  int schema() {
    desk.out().println(StudySchema.study().stripTrailing());
    desk.out().flush();
    return Main.OK;
  }

  private void say(String text) {
    desk.out().println(desk.terminal().wrap(text));
    desk.out().flush();
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static String shipped(String resource) {
    try (InputStream in = StudyCommand.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its own file " + resource);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException("cannot read " + resource, e);
    }
  }
}
