package broodtide.cli;

import broodtide.assessment.Horizon;
import broodtide.catalog.Catalog;
import broodtide.control.Plan;
import broodtide.decision.PlanChoice;
import broodtide.decision.PlanText;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Plans side by side. */
@Command(
    name = "compare",
    mixinStandardHelpOptions = true,
    header = "What each plan would do.",
    description = {
      "Compares plans: wait, cut drone comb, treat now, treat after harvest, the same with"
          + " oxalic acid in the broodless winter, and treat late. A study brings its"
          + " own. Your own plans are added, or replace them with --only."
    },
    footer = {
      "  broodtide compare washes.csv --climate temperate",
      "  broodtide compare washes.csv --climate temperate --with thymol",
      "  broodtide compare washes.csv --climate temperate \\",
      "      --plan \"on 2026-08-05 with thymol\"",
      "  broodtide compare washes.csv --climate temperate --only \\",
      "      --plan \"on 2026-08-05 with thymol\"",
      "  broodtide compare --study larkmeadow"
    })
final class CompareCommand implements Callable<Integer> {
  private final CommandContext desk;
  @Mixin private ColonyOptions colony = new ColonyOptions();
  @Mixin private EachOption each = new EachOption();
  @Mixin private RecordsOption records = new RecordsOption();
  @Mixin private RunOptions run = new RunOptions();

  @Option(
      names = "--with",
      paramLabel = "CONTROL",
      completionCandidates = KnownWords.Controls.class,
      description = "Use this control on each date of the usual plans.")
  private @Nullable String with;

  @Option(
      names = "--plan",
      paramLabel = "PLAN",
      description =
          "A plan of your own beside the usual ones, or those of the study, like \"on 2026-08-05"
              + " with thymol and on 2026-12-20 with oxalic-dribble\". May be repeated.")
  private List<String> own = List.of();

  @Option(names = "--only", description = "Compare the plans of --plan with waiting only.")
  private boolean only;

  CompareCommand(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    PlanChoice choice =
        new PlanChoice(
            Optional.ofNullable(with).map(Catalog::control),
            own.stream().map(PlanText::read).toList(),
            only);
    CaseReader.Cases read = new CaseReader(desk, colony).read(Horizon::spring);
    RecordsOption.Learned learned = records.learned(desk, run, read);
    CaseReader.Cases cases = learned.cases();
    return new PlanCommandRun(desk, run, "compare")
        .hives(each)
        .records(learned.said())
        .together(choice.own().stream().map(Plan::name).findFirst())
        .play(cases, c -> choice.of(c, cases.study()));
  }
}
