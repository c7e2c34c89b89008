package broodtide.web;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;

/** What was sent with a request that was let in: one JSON object. */
final class RequestBody {
  private static final ObjectMapper JSON =
      new ObjectMapper()
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION);

  /** Most bytes that are read only to be thrown away. */
  private static final long PASSED_OVER = 16L * RequestGuard.LARGEST;

  private RequestBody() {}

  /**
   * Reads it, up to the size that the guard allows.
   *
   * @throws Refused when it is anything but one JSON object
   */
  static JsonNode read(HttpExchange exchange) {
    try {
      byte[] bytes = exchange.getRequestBody().readNBytes(RequestGuard.LARGEST + 1);
      JsonNode node = JSON.readTree(bytes);
      if (node == null || !node.isObject()) {
        throw Refused.bad("expected one JSON object");
      }
      return node;
    } catch (JsonProcessingException e) {
      throw Refused.bad("this is not well-formed JSON; expected one object");
    } catch (IOException e) {
      throw Refused.bad("what was sent did not arrive whole; send it again");
    }
  }

  /**
   * Reads what was sent and throws it away, up to a bound: a connection that is closed before that
   * loses the answer, and with it the reason of a refusal.
   */
  static void passOver(HttpExchange exchange) {
    try {
      byte[] some = new byte[1 << 16];
      long read = 0;
      while (read < PASSED_OVER) {
        int more = exchange.getRequestBody().read(some);
        if (more < 0) {
          return;
        }
        read += more;
      }
    } catch (IOException e) {
      // Whoever sends no more wants no answer either.
    }
  }
}
