package broodtide.cli;

import broodtide.catalog.ClimateAnswers;
import broodtide.files.Outputs;
import broodtide.forms.BadInput;
import broodtide.lesson.StudySchema;
import broodtide.measure.OutOfRange;
import broodtide.study.Studies;
import broodtide.words.ClimateWords;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Studies as files. */
@Command(
    name = "study",
    mixinStandardHelpOptions = true,
    header = "Studies as files: new, check, schema.",
    description = {"Studies: a colony, its place, what was done and the plans, in one JSON file."},
    footer = {
      "  broodtide study new my-apiary",
      "  broodtide study check my-apiary/study.json",
      "  broodtide study schema > study-schema.json"
    })
final class StudyCommand implements Runnable {
  private static final String STARTER = "larkmeadow";
  private static final String STARTER_CLIMATE = "cool-maritime";

  private final CommandContext desk;
  @Spec private CommandSpec spec;

  StudyCommand(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public void run() {
    throw new Misuse.CommandMissing(spec.commandLine(), "Give a command: new, check or schema.");
  }

  @Command(
      name = "new",
      mixinStandardHelpOptions = true,
      header = "Writes a study to begin with.",
      description = {
        "Writes a commented study, a table of washes and a note what to edit. Files that are there"
            + " already are left as they are.",
        "Five questions lead to the climate of your place: --ask puts them one by one, --answer"
            + " gives an answer at once."
      },
      footer = {
        "  broodtide study new my-apiary",
        "  broodtide study new my-apiary --ask",
        "  broodtide study new my-apiary --answer winter-bees=08-20 --answer summer-high=24"
      })
  int create(
      @Parameters(paramLabel = "DIR", description = "Folder to write into.") Path folder,
      @Mixin ClimateOptions questions,
      @Mixin JsonOption as) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    String study = Studies.SHELF.find(STARTER).text().replace(STARTER + ".csv", "washes.csv");
    files.put("study.json", bytes(study));
    files.put("washes.csv", bytes(shipped("/library/studies/" + STARTER + ".csv")));
    files.put("WHAT-TO-EDIT.txt", bytes(shipped("/starter/WHAT-TO-EDIT.txt")));
    for (String name : files.keySet()) {
      if (Files.exists(folder.resolve(name))) {
        throw new Refusal(
            folder.resolve(name) + " exists already and is left as it is; give another folder");
      }
    }
    Outputs outputs = Outputs.handedOver(folder, files.keySet());
    List<ClimateAnswers.Fit> climates = questions.ranked(desk, as.json);
    if (!climates.isEmpty()) {
      String chosen = climates.get(0).climate().name();
      files.put("study.json", bytes(inClimate(study, chosen)));
    }
    String next = "broodtide compare --study " + folder.resolve("study.json");
    if (as.json) {
      ObjectNode json = JsonNodeFactory.instance.objectNode().put("folder", folder.toString());
      files.keySet().forEach(json.putArray("files")::add);
      if (!climates.isEmpty()) {
        json.put("climate", climates.get(0).climate().name());
      }
      print(json.put("next", next).toPrettyString());
    } else {
      if (!climates.isEmpty()) {
        ClimateWords.chosen(climates).forEach(this::say);
      }
      say(AnswerFiles.written(folder, files.keySet()));
      say("WHAT-TO-EDIT.txt says what to change. Then: " + next);
    }
    desk.deliver();
    outputs.write(files);
    return Main.OK;
  }

  @Command(
      name = "check",
      mixinStandardHelpOptions = true,
      header = "Lists every error in a study.",
      description = "Lists every error in a study and in its washes at once.",
      footer = "  broodtide study check my-apiary/study.json")
  int check(
      @Parameters(paramLabel = "FILE", description = "The study.") Path file,
      @Mixin JsonOption as) {
    StudyCheck check = new StudyCheck(desk, file.toString());
    try {
      check.read();
    } catch (BadInput | OutOfRange | Refusal e) {
      if (as.json) {
        print(check.faulty(e).toPrettyString());
      }
      throw e;
    }
    if (as.json) {
      print(check.sound().toPrettyString());
    } else {
      say(check.sentence());
    }
    return Main.OK;
  }

  @Command(
      name = "schema",
      mixinStandardHelpOptions = true,
      header = "Prints the JSON Schema of studies.",
      description = {
        "Prints the JSON Schema (draft 2020-12) of studies, for editors and other programs. It is"
            + " JSON with and without --json."
      },
      footer = "  broodtide study schema > study-schema.json")
  int schema(@Mixin JsonOption as) {
    print(StudySchema.study().stripTrailing());
    return Main.OK;
  }

  private static String inClimate(String study, String climate) {
    String was = "\"climate\": \"" + STARTER_CLIMATE + "\"";
    if (!study.contains(was)) {
      throw new IllegalStateException("the study to begin with does not name " + STARTER_CLIMATE);
    }
    return study.replace(was, "\"climate\": \"" + climate + "\"");
  }

  private void say(String text) {
    print(desk.terminal().wrap(text));
  }

  private void print(String text) {
    desk.out().println(text);
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
