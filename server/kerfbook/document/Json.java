package kerfbook.document;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.util.JsonParserDelegate;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.cfg.CoercionAction;
import com.fasterxml.jackson.databind.cfg.CoercionInputShape;
import com.fasterxml.jackson.databind.deser.std.StdScalarDeserializer;
import com.fasterxml.jackson.databind.introspect.AnnotatedMember;
import com.fasterxml.jackson.databind.introspect.AnnotatedParameter;
import com.fasterxml.jackson.databind.introspect.JacksonAnnotationIntrospector;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.type.LogicalType;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import kerfbook.campaign.Campaign;
import kerfbook.quantity.Invalid;

/**
 * One strict way of reading records from JSON, one way of writing them. Field names are the record's in snake case, units
 * included. Unknown, doubled, mistyped or null fields are refused; optional parts and empty lists may be left out.
 */
public final class Json {
    /** Longest document that is read, in bytes. */
    public static final int LARGEST = 8 * 1024 * 1024;
    private static final int DEEPEST = 40;
    private static final String HALF_PAIR = "holds half of a character pair (an escape such as \\ud83d without the other half). Remove it.";

    private static final JsonMapper MAPPER = JsonMapper.builder(JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder().maxNestingDepth(DEEPEST).maxNumberLength(60).maxStringLength(100_000).build())
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build())
        .addModule(new JavaTimeModule())
        .addModule(new Jdk8Module())
        .addModule(new SimpleModule().addSerializer(double.class, new FiniteOnly()).addSerializer(Double.class, new FiniteOnly())
            .addDeserializer(LocalDate.class, new IsoText<>(LocalDate.class, LocalDate::parse))
            .addDeserializer(Instant.class, new IsoText<>(Instant.class, Instant::parse))
            .addDeserializer(YearMonth.class, new IsoText<>(YearMonth.class, YearMonth::parse)))
        .annotationIntrospector(new RequiredUnlessOptional())
        .propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE)
        .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES, DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES,
            DeserializationFeature.FAIL_ON_TRAILING_TOKENS, DeserializationFeature.FAIL_ON_NUMBERS_FOR_ENUMS,
            DeserializationFeature.READ_ENUMS_USING_TO_STRING)
        .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
        .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
        .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
        .enable(SerializationFeature.WRITE_ENUMS_USING_TO_STRING)
        .defaultPropertyInclusion(JsonInclude.Value.construct(JsonInclude.Include.NON_ABSENT, JsonInclude.Include.ALWAYS))
        .withCoercionConfig(LogicalType.Textual, config -> config.setCoercion(CoercionInputShape.Integer, CoercionAction.Fail)
            .setCoercion(CoercionInputShape.Float, CoercionAction.Fail).setCoercion(CoercionInputShape.Boolean, CoercionAction.Fail))
        .build();

    /** Without the options of a campaign: they are other plans and no part of what this one rests on. */
    private static final JsonMapper INPUTS = MAPPER.rebuild().addMixIn(Campaign.class, WithoutOptions.class).build();

    @JsonIgnoreProperties("options")
    private interface WithoutOptions { }

    private Json() { }

    /** What a forecast of this campaign rests on. */
    static byte[] inputs(Campaign campaign) {
        try {
            return INPUTS.writeValueAsBytes(campaign);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("cannot write the campaign", e);
        }
    }

    /**
     * Reads one record.
     *
     * @throws Invalid with the path of the first field that is wrong
     */
    public static <T> T read(byte[] json, Class<T> type) {
        if (json.length > LARGEST) {
            throw new Invalid("", "The document has " + json.length + " bytes; at most " + LARGEST + " are read.");
        }
        try (JsonParser parser = new NoNulls(MAPPER.createParser(json))) {
            return read(parser, type);
        } catch (IOException e) {                   // from bytes in memory only where they are no text in any encoding
            throw new Invalid("", "This is not text in UTF-8.");
        }
    }

    private static <T> T read(JsonParser parser, Class<T> type) throws IOException {
        try {
            T value = MAPPER.readValue(parser, type);
            if (value == null) {
                throw new Invalid("", "The document is empty.");
            }
            return value;
        } catch (JsonProcessingException e) {
            throw Faults.of(e, Faults.path(parser.getParsingContext().pathAsPointer()));
        }
    }

    public static byte[] bytes(Object value) {
        try {
            return MAPPER.writeValueAsBytes(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("cannot write " + value.getClass().getSimpleName(), e);
        }
    }

    /** The same with line breaks and indents, for people. */
    public static byte[] readable(Object value) {
        try {
            return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsBytes(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("cannot write " + value.getClass().getSimpleName(), e);
        }
    }

    /** Everything must be there but optional parts and lists. */
    private static final class RequiredUnlessOptional extends JacksonAnnotationIntrospector {
        private static final long serialVersionUID = 1L;

        @Override
        public Boolean hasRequiredMarker(AnnotatedMember member) {
            if (member instanceof AnnotatedParameter parameter) {
                Class<?> type = parameter.getRawType();
                return type != Optional.class && type != List.class;
            }
            return super.hasRequiredMarker(member);
        }
    }

    /** Days, months and moments as texts only: the library takes lists of numbers and times of day too. */
    private static final class IsoText<T> extends StdScalarDeserializer<T> {
        private static final long serialVersionUID = 1L;
        private final transient Function<String, T> parse;

        IsoText(Class<T> type, Function<String, T> parse) {
            super(type);
            this.parse = parse;
        }

        @Override
        @SuppressWarnings("unchecked")
        public T deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            if (!parser.hasToken(JsonToken.VALUE_STRING)) {
                return (T) context.handleUnexpectedToken(handledType(), parser);
            }
            try {
                return parse.apply(parser.getText());
            } catch (DateTimeException e) {
                return (T) context.handleWeirdStringValue(handledType(), parser.getText(), "no such day");
            }
        }
    }

    /** A number that is none never leaves: where one is found, we have made a mistake. */
    private static final class FiniteOnly extends JsonSerializer<Double> {
        @Override
        public void serialize(Double value, JsonGenerator json, SerializerProvider provider) throws IOException {
            if (!Double.isFinite(value)) {
                throw new IllegalStateException("a figure is " + value + " at " + json.getOutputContext().pathAsPointer());
            }
            json.writeNumber(value);
        }
    }

    /** Stops at the first null, since nothing here may be null, and at half a character pair, which no text may hold. */
    private static final class NoNulls extends JsonParserDelegate {
        NoNulls(JsonParser parser) {
            super(parser);
        }

        @Override
        public JsonToken nextToken() throws IOException {
            JsonToken token = super.nextToken();
            if (token == JsonToken.VALUE_NULL) {
                throw new NotHere(Faults.path(getParsingContext().pathAsPointer()),
                    "is null. Give it a value, or leave the field out if it is optional.");
            }
            if (token == JsonToken.VALUE_STRING && halfPair(getText())) {
                throw new NotHere(Faults.path(getParsingContext().pathAsPointer()), HALF_PAIR);
            }
            if (token == JsonToken.FIELD_NAME && halfPair(currentName())) {
                throw new NotHere(Faults.path(getParsingContext().getParent().pathAsPointer()), HALF_PAIR);
            }
            return token;
        }

        private static boolean halfPair(String text) {
            for (int i = 0; i < text.length(); i++) {
                char c = text.charAt(i);
                if (Character.isLowSurrogate(c) || Character.isHighSurrogate(c) && (++i == text.length() || !Character.isLowSurrogate(text.charAt(i)))) {
                    return true;
                }
            }
            return false;
        }
    }

    /** Found at a path what may stand nowhere. */
    static final class NotHere extends JsonProcessingException {
        private static final long serialVersionUID = 1L;
        final String path;

        NotHere(String path, String detail) {
            super(detail);
            this.path = path;
        }
    }
}
