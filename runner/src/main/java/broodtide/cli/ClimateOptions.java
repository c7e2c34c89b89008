package broodtide.cli;

import broodtide.catalog.ClimateAnswers;
import broodtide.catalog.ClimateQuestion;
import broodtide.measure.OutOfRange;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;

/** Questions that lead to a climate, put one by one or answered on the command line. */
final class ClimateOptions {
  @Option(names = "--ask", description = "Asks five questions that lead to a climate.")
  private boolean ask;

  @Option(
      names = "--answer",
      paramLabel = "QUESTION=ANSWER",
      description =
          "Answers a question on the climate: winter-bees=08-20, midwinter-brood=none (or little,"
              + " plenty), supers-off=08-15, drone-brood=04-20, summer-high=24.")
  private List<String> answers = List.of();

  @Option(names = "--south", description = "The answers are for a place south of the equator.")
  private boolean southern;

  /**
   * {@return climates by the answers, the closest first; empty when there are none}
   *
   * @param context where questions are put
   * @param quiet whether standard output is for another program, so that questions go elsewhere
   */
  List<ClimateAnswers.Fit> ranked(CommandContext context, boolean quiet) {
    Map<ClimateQuestion, Double> given = new EnumMap<>(ClimateQuestion.class);
    answers.forEach(a -> read(a, given));
    if (ask) {
      ask(context, quiet ? context.err() : context.out(), given);
    }
    if (given.isEmpty()) {
      return List.of();
    }
    return new ClimateAnswers(given, southern).ranked();
  }

  private static void read(String answer, Map<ClimateQuestion, Double> into) {
    int equals = answer.indexOf('=');
    ClimateQuestion question =
        ClimateQuestion.named(equals < 0 ? answer : answer.substring(0, equals))
            .filter(q -> equals > 0)
            .orElseThrow(
                () ->
                    new Refusal(
                        "--answer has "
                            + answer
                            + "; expected QUESTION=ANSWER, where QUESTION is one of "
                            + Arrays.stream(ClimateQuestion.values())
                                .map(ClimateQuestion::id)
                                .collect(Collectors.joining(", "))));
    try {
      if (into.put(question, question.read(answer.substring(equals + 1))) != null) {
        throw new Refusal("--answer " + question.id() + " is given twice; give it once");
      }
    } catch (OutOfRange e) {
      throw new Refusal("--answer " + e.getMessage());
    }
  }

  private static void ask(
      CommandContext context, PrintWriter to, Map<ClimateQuestion, Double> into) {
    BufferedReader in =
        new BufferedReader(new InputStreamReader(context.in(), StandardCharsets.UTF_8));
    for (ClimateQuestion question : ClimateQuestion.values()) {
      if (!into.containsKey(question)) {
        to.println(question.text());
        to.println("  " + question.expected() + "; press Enter if you do not know");
        to.flush();
        try {
          asked(question, in, to, into);
        } catch (IOException e) {
          throw new Refusal(
              "cannot read the answers: " + e.getMessage() + "; give them with --answer");
        }
      }
    }
  }

  /** Puts a question until the answer is one. */
  private static void asked(
      ClimateQuestion question,
      BufferedReader in,
      PrintWriter to,
      Map<ClimateQuestion, Double> into)
      throws IOException {
    for (String line = in.readLine(); line != null && !line.isBlank(); line = in.readLine()) {
      try {
        into.put(question, question.read(line));
        return;
      } catch (OutOfRange e) {
        to.println("  Please give " + question.expected() + ".");
        to.flush();
      }
    }
  }
}
