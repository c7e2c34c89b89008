package broodtide.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;

/**
 * What is sent back.
 *
 * @param status HTTP status
 * @param type media type
 * @param body the bytes
 */
public record Response(int status, String type, byte[] body) {
  public static Response html(int status, Html page) {
    return of(status, "text/html; charset=utf-8", page.markup());
  }

  public static Response json(int status, JsonNode value) {
    return of(status, "application/json; charset=utf-8", value.toString());
  }

  public static Response svg(int status, String picture) {
    return of(status, "image/svg+xml; charset=utf-8", picture);
  }

  private static Response of(int status, String type, String text) {
    return new Response(status, type, text.getBytes(StandardCharsets.UTF_8));
  }
}
