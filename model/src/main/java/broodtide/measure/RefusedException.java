package broodtide.measure;

import org.jspecify.annotations.Nullable;

/**
 * Something that a user gave cannot be used, and the message says what and how to mend it. Every
 * refusal that a user may see is one of these; any other exception is a fault of the program.
 */
public class RefusedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /**
   * @param message what cannot be used, what is allowed, how to mend it
   */
  public RefusedException(String message) {
    super(message);
  }

  /**
   * @param message what cannot be used, what is allowed, how to mend it
   * @param cause what it came from, if anything
   */
  public RefusedException(String message, @Nullable Throwable cause) {
    super(message, cause);
  }

  /** {@return the message} */
  public String reason() {
    return String.valueOf(getMessage());
  }
}
