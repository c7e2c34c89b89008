package broodtide.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;

/**
 * What is sent back.
 *
 * @param status HTTP status
 * @param type media type
 * @param body the bytes
 * @param inlineStyle whether it is a page that carries its style in itself
 */
public record Response(int status, String type, byte[] body, boolean inlineStyle) {
  /**
   * What is sent back, without any style of its own.
   *
   * @param status HTTP status
   * @param type media type
   * @param body the bytes
   */
  public Response(int status, String type, byte[] body) {
    this(status, type, body, false);
  }

  /** A page that needs nothing else and carries its style in itself. */
  public static Response wholePage(byte[] page) {
    return new Response(200, "text/html; charset=utf-8", page, true);
  }

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
