package broodtide.cli;

/** A call that cannot be carried out, in one message for the user. */
final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1L;

  Refusal(String message) {
    super(message);
  }
}
