package broodtide.catalog;

import broodtide.forms.Form;
import broodtide.forms.Node;
import broodtide.forms.Reading;
import broodtide.forms.SchemaParts;
import broodtide.lesson.Library;
import broodtide.season.Climate;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;

/** A climate of the library by name, of the user's own by path, or written out. */
public record ClimateForm() implements Form<Climate> {
  private static final LibraryForm<Climate> NAMED =
      new LibraryForm<>(Library.Shelf.CLIMATES, ClimateFile.FORM);

  @Override
  public @Nullable Climate read(Node node, Reading in) {
    return node instanceof Node.Obj ? ClimateFile.FORM.read(node, in) : NAMED.read(node, in);
  }

  @Override
  public JsonNode write(Climate climate) {
    JsonNode written = ClimateFile.FORM.write(climate);
    boolean shipped =
        Library.names(Library.Shelf.CLIMATES).contains(climate.name())
            && ClimateFile.FORM.write(Library.climate(climate.name())).equals(written);
    return shipped ? JsonNodeFactory.instance.textNode(climate.name()) : written;
  }

  @Override
  public ObjectNode schema(SchemaParts parts) {
    ObjectNode out = SchemaParts.object();
    out.putArray("oneOf").add(NAMED.schema(parts)).add(ClimateFile.FORM.schema(parts));
    return out;
  }
}
