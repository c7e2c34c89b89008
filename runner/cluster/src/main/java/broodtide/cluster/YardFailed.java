package broodtide.cluster;

/** Work on a yard met a fault of the program, which ends the job. */
final class YardFailed extends RuntimeException {
  private static final long serialVersionUID = 1L;

  YardFailed(String hive, String yard, Exception cause) {
    super("colony \"" + hive + "\" of yard \"" + yard + "\" cannot be worked out: " + cause, cause);
  }
}
