package broodtide.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Completion of words by the shell. */
@Command(
    name = "completion",
    mixinStandardHelpOptions = true,
    header = "A script that completes words in bash and zsh.",
    description = {
      "Prints a script with which bash and zsh complete commands, options and their words when the"
          + " tab key is pressed. The program must be on the search path as 'broodtide'."
    },
    footer = {
      "  source <(broodtide completion)",
      "  broodtide completion > ~/.broodtide-completion"
    })
final class CompletionCommand implements Callable<Integer> {
  private final CommandContext desk;
  @Mixin private JsonOption as = new JsonOption();
  @Spec private CommandSpec spec;

  CompletionCommand(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    String script = AutoComplete.bash("broodtide", spec.root().commandLine());
    desk.out()
        .println(
            as.json
                ? new ObjectMapper().createObjectNode().put("script", script).toPrettyString()
                : script.stripTrailing());
    desk.out().flush();
    return Main.OK;
  }
}
