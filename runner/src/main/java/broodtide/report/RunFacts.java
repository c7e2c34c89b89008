package broodtide.report;

/**
 * How a report was made, so that it can be made again.
 *
 * @param command the command's name, for instance {@code compare}
 * @param version version of the program
 * @param seed seed of the random numbers
 * @param members simulated colonies; 0 where nothing was drawn by chance
 * @param line the command line, quoted for a shell, without what leaves the figures alone
 */
public record RunFacts(String command, String version, long seed, int members, String line) {}
