package broodtide.study;

import broodtide.measure.OutOfRange;
import broodtide.measure.Tag;
import broodtide.wash.Stage;
import broodtide.wash.ThresholdSet;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.exc.InvalidNullException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.introspect.Annotated;
import com.fasterxml.jackson.databind.introspect.AnnotatedMember;
import com.fasterxml.jackson.databind.introspect.AnnotatedParameter;
import com.fasterxml.jackson.databind.introspect.JacksonAnnotationIntrospector;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The threshold sets that travel with the project, and the reader of a user's own. */
public final class ThresholdLibrary {
  private static final List<String> NAMES =
      List.of(
          "common-practice",
          "all-season-three",
          "cold-winter-east",
          "dry-summer-inland",
          "long-season-south",
          "prairie-spring",
          "winter-end-none");

  private static final ObjectMapper JSON =
      JsonMapper.builder()
          .enable(JsonReadFeature.ALLOW_JAVA_COMMENTS)
          .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
          .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
          .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
          .annotationIntrospector(new RequiredUnlessOptional())
          .withConfigOverride(
              List.class, o -> o.setSetterInfo(JsonSetter.Value.forValueNulls(Nulls.AS_EMPTY)))
          .addModule(
              new SimpleModule()
                  .addDeserializer(Stage.class, new ById<>(Stage.class, Stage::id))
                  .addDeserializer(
                      Tag.class, new ById<>(Tag.class, t -> t.name().toLowerCase(Locale.ROOT))))
          .build();

  private ThresholdLibrary() {}

  /** {@return names of the shipped sets; the first one is the default} */
  public static List<String> names() {
    return NAMES;
  }

  /**
   * {@return a shipped set}
   *
   * @param name one of {@link #names()}
   * @throws BadInput when there is none of that name; the message lists those there are
   */
  public static ThresholdSet shipped(String name) {
    if (!NAMES.contains(name)) {
      String choice = String.join(", ", NAMES);
      String message =
          "choose one of "
              + choice
              + "; or give the path of a file of your own, ending in .json"
              + Nearest.hint(name, NAMES);
      throw BadInput.of(new Fault("thresholds", 0, 0, "name", name, message));
    }
    return read(new Source.Shipped("thresholds", name + ".json"));
  }

  /**
   * A set by name, or by the path of a user's own file; paths start at the working directory.
   *
   * @param nameOrPath a shipped name, or a path with a slash or ending in .json
   * @return the set of thresholds
   * @throws BadInput when there is none, or the file is faulty
   */
  public static ThresholdSet find(String nameOrPath) {
    return find(nameOrPath, Source.here());
  }

  /** The same with paths that start beside a file. */
  static ThresholdSet find(String nameOrPath, Source from) {
    return Library.isPath(nameOrPath)
        ? read(Library.own("thresholds", nameOrPath, from))
        : shipped(nameOrPath);
  }

  /**
   * Reads a set from JSON with the fields of {@link ThresholdSet}.
   *
   * @param source the text
   * @return the set of thresholds
   * @throws BadInput when the text is no such set
   */
  public static ThresholdSet read(Source source) {
    String file = source.name();
    String text = source.text();
    Faults faults = new Faults(file);
    JsonTree.read(text, faults);
    faults.throwIfAny();
    try {
      ThresholdSet set = JSON.readValue(text, ThresholdSet.class);
      if (set == null) {
        throw BadInput.of(Fault.of(file, "holds no threshold set"));
      }
      return set;
    } catch (JsonProcessingException e) {
      throw BadInput.of(fault(e, file));
    }
  }

  private static Fault fault(JsonProcessingException e, String file) {
    JsonLocation at = e.getLocation();
    int line = at == null ? 0 : Math.max(0, at.getLineNr());
    int column = at == null ? 0 : Math.max(0, at.getColumnNr());
    String path = e instanceof JsonMappingException m ? path(m) : "";
    return new Fault(file, line, column, path, null, words(e));
  }

  private static String words(JsonProcessingException e) {
    String plain = String.valueOf(e.getOriginalMessage());
    if (e.getCause() instanceof OutOfRange bad) {
      return String.valueOf(bad.getMessage());
    }
    if (e instanceof UnrecognizedPropertyException unknown) {
      Object known = unknown.getKnownPropertyIds();
      return "no such field; the fields here are " + known + "; correct or remove it";
    }
    if (plain.startsWith("Missing required creator property")) {
      return "the field is missing; add it";
    }
    if (e instanceof InvalidNullException) {
      return "null cannot be used; give a value";
    }
    if (e instanceof MismatchedInputException wrong && wrong.getTargetType() != null) {
      return "allowed is " + kind(wrong.getTargetType()) + " here";
    }
    return plain;
  }

  private static String kind(Class<?> type) {
    if (type == double.class || type == Double.class) {
      return "a number without quotes";
    }
    if (type == int.class) {
      return "a whole number without quotes";
    }
    return type == String.class ? "text in quotes" : type == List.class ? "a list" : "an object";
  }

  private static String path(JsonMappingException e) {
    StringBuilder out = new StringBuilder();
    for (JsonMappingException.Reference step : e.getPath()) {
      if (step.getFieldName() == null) {
        out.append('[').append(step.getIndex()).append(']');
      } else {
        out.append(out.isEmpty() ? "" : ".").append(step.getFieldName());
      }
    }
    return out.toString();
  }

  /** Every field must be there and not null, but for those that may be left out. */
  private static final class RequiredUnlessOptional extends JacksonAnnotationIntrospector {
    private static final long serialVersionUID = 1L;
    private static final Set<String> OPTIONAL = Set.of("upTo", "bands", "note", "signs");

    @Override
    public Boolean hasRequiredMarker(AnnotatedMember member) {
      return required(member);
    }

    @Override
    public JsonSetter.Value findSetterInfo(Annotated member) {
      return required(member)
          ? JsonSetter.Value.forValueNulls(Nulls.FAIL)
          : super.findSetterInfo(member);
    }

    private static boolean required(Annotated member) {
      return member instanceof AnnotatedParameter p
          && p.getDeclaringClass().isRecord()
          && !OPTIONAL.contains(
              p.getDeclaringClass().getRecordComponents()[p.getIndex()].getName());
    }
  }

  /** Reads an enum by the name that files use. */
  private static final class ById<E extends Enum<E>> extends StdDeserializer<E> {
    private static final long serialVersionUID = 1L;
    private final transient Function<E, String> id;
    private final Class<E> type;

    ById(Class<E> type, Function<E, String> id) {
      super(type);
      this.type = type;
      this.id = id;
    }

    @Override
    public E deserialize(JsonParser parser, DeserializationContext context) throws IOException {
      String text = parser.getText();
      E[] all = type.getEnumConstants();
      for (E each : all) {
        if (id.apply(each).equals(text)) {
          return each;
        }
      }
      String choice = Arrays.stream(all).map(id).collect(Collectors.joining(", "));
      throw JsonMappingException.from(
          parser, Fault.quoted(text) + " cannot be used; choose one of " + choice);
    }
  }
}
