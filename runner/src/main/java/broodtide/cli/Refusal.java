package broodtide.cli;

import broodtide.measure.RefusedException;

/** A call that cannot be carried out, in one message for the user. */
final class Refusal extends RefusedException {
  private static final long serialVersionUID = 1L;

  Refusal(String message) {
    super(message);
  }
}
