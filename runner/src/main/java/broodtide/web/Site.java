package broodtide.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URI;

/** What a local server serves; asked by several threads at once. */
public interface Site {
  /**
   * {@return the answer to a request that was let in}
   *
   * @param address the address asked for
   * @throws Refused when there is no such page or a value is not allowed
   */
  Response answer(URI address);

  /**
   * {@return the answer to what was sent; a site that takes nothing refuses}
   *
   * @param address the address that it was sent to
   * @param body what was sent
   * @throws broodtide.measure.RefusedException when it is not allowed
   */
  default Response post(URI address, JsonNode body) {
    throw Refused.unknown("nothing can be sent to this address");
  }

  /**
   * {@return the page or object that says why a request is refused}
   *
   * @param address the address asked for
   * @param status HTTP status
   * @param message why, for people
   */
  Response refusal(URI address, int status, String message);

  /** Does beforehand what the first visitors would have to wait for. */
  void warm();
}
