package broodtide.catalog;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.forms.Faults;
import broodtide.forms.JsonTree;
import broodtide.forms.Nearest;
import broodtide.forms.Node;
import broodtide.forms.Source;
import broodtide.measure.OutOfRange;
import broodtide.measure.Tag;
import broodtide.season.YearSpan;
import broodtide.wash.Stage;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.cfg.CoercionAction;
import com.fasterxml.jackson.databind.cfg.CoercionInputShape;
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
import com.fasterxml.jackson.databind.type.LogicalType;
import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.time.MonthDay;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The sets of treatment thresholds that travel with the project, and the reader of a user's own.
 */
public final class ThresholdLibrary {
  private static final List<String> NAMES =
      List.of(
          "kulhanek-2021",
          "ages-2015",
          "delaplane-hood-1999",
          "gds-france",
          "kretzschmar-maisonnasse-2022",
          "strange-sheppard-2001");

  private static final int MOST_MITES = 1000;
  private static final Pattern FIGURE =
      Pattern.compile("(\\d{1,4}(?:\\.\\d{1,6})?)(?:/(\\d{1,4}))?");
  private static final String CHOICES =
      "; or give the path of a file of your own, ending in .json; or a figure, such as 3 (mites per"
          + " 100 bees) or 9/300";

  private static final String SHELF = "thresholds";
  private static final List<String> FIELDS =
      Arrays.stream(ThresholdSet.class.getRecordComponents())
          .map(RecordComponent::getName)
          .toList();

  private static final ObjectMapper JSON =
      JsonMapper.builder()
          .enable(JsonReadFeature.ALLOW_JAVA_COMMENTS)
          .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
          .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
          .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
          .annotationIntrospector(new RequiredUnlessOptional())
          .withConfigOverride(
              List.class, o -> o.setSetterInfo(JsonSetter.Value.forContentNulls(Nulls.FAIL)))
          .withCoercionConfig(
              LogicalType.Textual,
              text -> {
                text.setCoercion(CoercionInputShape.Integer, CoercionAction.Fail);
                text.setCoercion(CoercionInputShape.Float, CoercionAction.Fail);
                text.setCoercion(CoercionInputShape.Boolean, CoercionAction.Fail);
              })
          .addModule(
              new SimpleModule()
                  .addDeserializer(YearSpan.class, new Ends())
                  .addDeserializer(Stage.class, new ById<>(Stage.class, Stage::id))
                  .addDeserializer(
                      Tag.class, new ById<>(Tag.class, t -> t.name().toLowerCase(Locale.ROOT))))
          .build();

  private ThresholdLibrary() {}

  /** {@return the name of the set that holds when none is named} */
  public static String usual() {
    return NAMES.get(0);
  }

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
      String message = "choose one of " + choice + CHOICES + Nearest.hint(name, NAMES);
      throw BadInput.of(new Fault("threshold", 0, 0, "name", name, message));
    }
    return read(new Source.Shipped(SHELF, name + ".json"));
  }

  /**
   * A set by name, by the path of a user's own file, or one figure for every day; paths start at
   * the working directory.
   *
   * @param text a shipped name; a path with a slash or ending in .json; mites per 100 bees, such as
   *     {@code 3}; or mites in a number of bees, such as {@code 9/300}
   * @return the treatment thresholds
   * @throws BadInput when there is none, or the file is faulty
   */
  public static ThresholdSet find(String text) {
    return find(text, Source.here());
  }

  /** The same with paths that start beside a file. */
  static ThresholdSet find(String text, Source from) {
    Matcher figure = FIGURE.matcher(text);
    if (figure.matches()) {
      return figure(text, figure);
    }
    return Shelf.isPath(text) ? read(Shelf.own(SHELF, text, from)) : shipped(text);
  }

  /** One figure for every day; a beekeeper does not name more than one mite for each bee. */
  private static ThresholdSet figure(String text, Matcher figure) {
    double mites = Double.parseDouble(figure.group(1));
    int bees = figure.group(2) == null ? 100 : Integer.parseInt(figure.group(2));
    if (mites < 0.01 || mites > Math.min(bees, MOST_MITES) || bees < 1 || bees > Wash.MOST_BEES) {
      String message =
          "expected a figure of 0.01 to 100 mites per 100 bees, such as 3, or up to "
              + MOST_MITES
              + " mites, and no more than bees, in up to "
              + Wash.MOST_BEES
              + " bees, such as 9/300";
      throw BadInput.of(new Fault("threshold", 0, 0, "", text, message));
    }
    return ThresholdSet.given(text, mites, bees);
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
    Node root = JsonTree.read(text, faults);
    if (root instanceof Node.Obj object) {
      object.keys().forEach((name, at) -> checkName(name, at, faults));
    }
    faults.throwIfAny();
    try {
      ThresholdSet set = JSON.readValue(text, ThresholdSet.class);
      if (set == null) {
        throw BadInput.of(Fault.of(file, "holds no treatment thresholds"));
      }
      return set;
    } catch (JsonProcessingException e) {
      throw BadInput.of(fault(e, file));
    }
  }

  /** Jackson says only at the end of the object, on another line, that it does not know a field. */
  private static void checkName(String name, Node.Spot at, Faults faults) {
    if (!FIELDS.contains(name)) {
      String message =
          name.equals("limits")
              ? "the field is called \"thresholds\" now; change the name on this line"
              : "no such field; the fields here are "
                  + String.join(", ", FIELDS)
                  + "; correct or remove it";
      faults.add(at.line(), at.column(), name, null, message);
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
      return "null is not valid; give a value";
    }
    if (e instanceof MismatchedInputException wrong && wrong.getTargetType() != null) {
      return "expected " + kind(wrong.getTargetType()) + " here";
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
    private static final Set<String> OPTIONAL = Set.of("stage", "days", "upTo", "note");

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

  /** Reads a stretch of the year from its first and last day. */
  private static final class Ends extends StdDeserializer<YearSpan> {
    private static final long serialVersionUID = 1L;

    Ends() {
      super(YearSpan.class);
    }

    @Override
    public YearSpan deserialize(JsonParser parser, DeserializationContext context)
        throws IOException {
      JsonNode node = parser.readValueAsTree();
      try {
        if (node.isArray()
            && node.size() == 2
            && node.get(0).isTextual()
            && node.get(1).isTextual()) {
          return new YearSpan(day(node.get(0)), day(node.get(1)));
        }
      } catch (DateTimeParseException e) {
        // the message below says what is wanted
      }
      throw JsonMappingException.from(
          parser, "expected the first and the last day, such as [\"08-01\", \"08-31\"]");
    }

    private static MonthDay day(JsonNode text) {
      return MonthDay.parse("--" + text.asText());
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
      if (!parser.hasToken(JsonToken.VALUE_STRING)) {
        throw JsonMappingException.from(parser, "expected text in quotes here");
      }
      String text = parser.getText();
      E[] all = type.getEnumConstants();
      for (E each : all) {
        if (id.apply(each).equals(text)) {
          return each;
        }
      }
      String choice = Arrays.stream(all).map(id).collect(Collectors.joining(", "));
      throw JsonMappingException.from(
          parser, Fault.quoted(text) + " is not valid; choose one of " + choice);
    }
  }
}
