package broodtide.results;

import broodtide.assessment.Difference;
import broodtide.assessment.QuantileSummary;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Iterator;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * How figures stand in every JSON file: numbers with four significant digits, bands by quantile.
 */
final class JsonFigures {
  private static final ObjectMapper JSON =
      JsonMapper.builder()
          .enable(SerializationFeature.INDENT_OUTPUT)
          .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
          .build();
  private static final ObjectMapper LINE =
      JsonMapper.builder().enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN).build();
  private static final MathContext FOUR = new MathContext(4);

  /** Less than any figure of a colony that can be told from nothing. */
  private static final double LEAST = 1e-6;

  /** Powers of ten up to this one are whole numbers in double precision. */
  private static final int EXACT = 22;

  /** Half, less what scaling by a power of ten may err in five digits. */
  private static final double HALF = 0.5 - 1e-9;

  private JsonFigures() {}

  /**
   * The head that every file of results begins with.
   *
   * @param format name and version of the format
   * @param tool the command
   * @param version version of the program
   */
  static ObjectNode head(String format, String tool, String version) {
    ObjectNode root = JSON.createObjectNode();
    root.put("format", format);
    root.put("tool", tool);
    root.put("program", "broodtide " + version);
    return root;
  }

  /** A shipped object. */
  static ObjectNode resource(String name) {
    try (InputStream in = JsonFigures.class.getResourceAsStream(name)) {
      return (ObjectNode) JSON.readTree(Objects.requireNonNull(in, name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A file's text, with a line end. */
  static String text(ObjectNode root) {
    try {
      return JSON.writeValueAsString(root) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("results cannot be written as JSON", e);
    }
  }

  /** An object on one line, with a line end. */
  static String line(JsonNode object) {
    try {
      return LINE.writeValueAsString(object) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("results cannot be written as JSON", e);
    }
  }

  /**
   * Writes a file's text, in which the objects of one array come from elsewhere one by one.
   *
   * @param root the file
   * @param array name of the array, which stands empty in it
   * @param objects each as {@link #line}
   * @param out takes the text
   */
  static void text(ObjectNode root, String array, Iterator<String> objects, Writer out) {
    ObjectReader exact = JSON.reader().with(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS);
    try (JsonGenerator json =
        JSON.createGenerator(out)
            .useDefaultPrettyPrinter()
            .disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET)) {
      json.writeStartObject();
      for (Map.Entry<String, JsonNode> field : root.properties()) {
        json.writeFieldName(field.getKey());
        if (field.getKey().equals(array)) {
          json.writeStartArray();
          while (objects.hasNext()) {
            json.writeTree(exact.readTree(objects.next()));
          }
          json.writeEndArray();
        } else {
          json.writeTree(field.getValue());
        }
      }
      json.writeEndObject();
      json.writeRaw('\n');
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Four significant digits; 0 for what rounding alone left. */
  static BigDecimal four(double value) {
    if (Math.abs(value) < LEAST) {
      return BigDecimal.ZERO;
    }
    int scale = 3 - (int) Math.floor(Math.log10(Math.abs(value)));
    double shifted = Math.abs(scale) > EXACT ? Double.NaN : shift(value, scale);
    double rest = Math.abs(shifted - Math.rint(shifted));
    // Where the nearest whole number is beyond doubt, it needs no exact arithmetic.
    if (rest < HALF) {
      return BigDecimal.valueOf((long) Math.rint(shifted), scale).round(FOUR).stripTrailingZeros();
    }
    return new BigDecimal(value).round(FOUR).stripTrailingZeros();
  }

  private static double shift(double value, int digits) {
    double power = 1;
    for (int i = Math.abs(digits); i > 0; i--) {
      power *= 10;
    }
    return digits < 0 ? value / power : value * power;
  }

  /** The same, null for what is not a number because it is not known. */
  static @Nullable BigDecimal known(double value) {
    return Double.isNaN(value) ? null : four(value);
  }

  /** Fills {@code {q05,q25,median,q75,q95}}. */
  static void band(ObjectNode node, QuantileSummary s) {
    node.put("q05", four(s.q05()));
    node.put("q25", four(s.q25()));
    node.put("median", four(s.median()));
    node.put("q75", four(s.q75()));
    node.put("q95", four(s.q95()));
  }

  /**
   * Fills mean and band of a difference.
   *
   * @param chance name of the field with the chance that the first is smaller
   */
  static void difference(ObjectNode node, Difference d, String chance) {
    node.put("mean", four(d.mean()));
    band(node, d.band());
    node.put(chance, four(d.chanceSmaller()));
  }
}
