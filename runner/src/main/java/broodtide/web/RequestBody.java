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
}
