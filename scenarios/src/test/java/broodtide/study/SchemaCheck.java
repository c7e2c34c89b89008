package broodtide.study;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.List;

/** An independent validator, for holding reader and schema against each other. */
public final class SchemaCheck {
  private static final JsonMapper WITH_COMMENTS =
      JsonMapper.builder().enable(JsonReadFeature.ALLOW_JAVA_COMMENTS).build();

  private final Schema schema;

  public SchemaCheck(String schemaText) {
    schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(schemaText);
  }

  public static JsonNode parse(String text) {
    try {
      return WITH_COMMENTS.readTree(text);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(e);
    }
  }

  public List<Error> errors(JsonNode value) {
    return schema.validate(
        value, context -> context.executionConfig(c -> c.formatAssertionsEnabled(true)));
  }
}
