package broodtide.cli;

import broodtide.season.YearSpan;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/**
 * Where the colony stands and what is known of it; the same words in every command. Files are
 * paths, for which shells complete the names of files.
 */
final class ColonyOptions {
  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "WASHES",
      description =
          "Table of washes (CSV): date,colony,mites,bees. '-' reads standard input. Alcohol and"
              + " bees of mixed frames are assumed; columns method and frame say otherwise.")
  private @Nullable Path positional;

  @Option(names = "--washes", paramLabel = "FILE", description = "The same, by name.")
  private @Nullable Path washes;

  @Option(
      names = "--given",
      paramLabel = "FILE",
      description =
          "Table of treatments already given (CSV): date,colony,control. How well miticides worked"
              + " is estimated from the washes.")
  @Nullable Path given;

  @Option(
      names = "--climate",
      paramLabel = "CLIMATE",
      description = "Climate, by name or path of a JSON file. Known: ${COMPLETION-CANDIDATES}.",
      completionCandidates = KnownWords.Climates.class)
  @Nullable String climate;

  @Option(names = "--south", description = "The place is south of the equator.")
  boolean south;

  @Option(
      names = "--study",
      paramLabel = "FILE",
      description = "Study (JSON) that says all of this and more.")
  @Nullable Path study;

  @Option(names = "--colony", paramLabel = "COLONY", description = "Only this colony of the table.")
  @Nullable String colony;

  @Option(
      names = "--neighbours",
      paramLabel = "DENSITY",
      description =
          "Colonies around, which bring mites: ${COMPLETION-CANDIDATES}. Default: sparse.",
      completionCandidates = KnownWords.Neighbours.class)
  @Nullable String neighbours;

  @Option(
      names = "--threshold",
      paramLabel = "THRESHOLD",
      description =
          "Treatment threshold: N (mites per 100 bees), N/300 (mites in 300 bees) or the"
              + " path of a JSON file. Or a set by name: ${COMPLETION-CANDIDATES}. Default:"
              + " kulhanek-2021, 3 per 100.",
      completionCandidates = KnownWords.Thresholds.class)
  @Nullable String threshold;

  @Option(
      names = "--supers",
      paramLabel = "FROM..TO",
      description = "When your supers are on, like 05-10..07-25. Default: the climate's.")
  @Nullable YearSpan supers;

  @Option(
      names = "--winter-bees",
      paramLabel = "FROM..TO",
      description = "When your winter bees are reared, like 08-15..09-30. Default: the climate's.")
  @Nullable YearSpan winterBees;

  @Option(
      names = "--highs",
      paramLabel = "FILE",
      description =
          "Table of daily highs (CSV): date,high in degrees Celsius, recorded or forecast."
              + " Default: the climate's usual ones.")
  @Nullable Path highs;

  @Option(
      names = "--resistant",
      paramLabel = "SUBSTANCE",
      split = ",",
      description =
          "Active substances that have worked badly here, separated by commas; resistant mites are"
              + " assumed.")
  List<String> resistant = List.of();

  @Option(
      names = "--until",
      paramLabel = "DATE",
      description =
          "Last day of the forecast. Default: when the winter bees have been raised, or the spring"
              + " after where the winter is judged too.")
  @Nullable LocalDate until;

  @Option(
      names = "--decide-on",
      paramLabel = "DATE",
      description =
          "The day of decision, from which plans run, for all colonies. Default: the day after the"
              + " newest wash or treatment of the tables; for a study, of its colony.")
  @Nullable LocalDate decideOn;

  /** The first option given that a study says itself, by its name. */
  Optional<String> saidByStudy() {
    return climate != null
        ? Optional.of("--climate")
        : south
            ? Optional.of("--south")
            : neighbours != null
                ? Optional.of("--neighbours")
                : colony != null ? Optional.of("--colony") : Optional.empty();
  }

  /** The table of washes, however it was given. */
  Optional<String> washes() {
    if (positional != null && washes != null) {
      throw new Refusal(
          "the washes are given twice, as "
              + positional
              + " and as --washes "
              + washes
              + "; keep one");
    }
    return Optional.ofNullable(positional != null ? positional : washes).map(Path::toString);
  }
}
