package kerfbook.http;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import kerfbook.estimate.Forecast;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import org.junit.jupiter.api.Test;

/** LAW: the shapes of a forecast in openapi.json are those of its records, also where no demonstration fills them. */
class OpenApiTest {
    private static final PropertyNamingStrategies.SnakeCaseStrategy SNAKE = new PropertyNamingStrategies.SnakeCaseStrategy();

    @Test
    void every_record_of_a_forecast_is_described_field_by_field() {
        Map<String, Class<?>> records = new LinkedHashMap<>();
        visit(Forecast.class, records);
        List<String> wrong = new ArrayList<>();
        records.forEach((name, type) -> {
            JsonNode described = Described.API.at("/components/schemas/" + name);
            Set<String> fields = new TreeSet<>();
            Set<String> required = new TreeSet<>();
            for (RecordComponent component : type.getRecordComponents()) {
                String field = SNAKE.translate(component.getName());
                fields.add(field);
                if (!List.of(Optional.class, OptionalDouble.class, OptionalInt.class).contains(component.getType())) {
                    required.add(field);
                }
                if (component.getType().isEnum() && described.at("/properties/" + field).has("enum")) {
                    same(name + "." + field, words(component.getType()), texts(described.at("/properties/" + field + "/enum")), wrong);
                }
            }
            same(name, fields, names(described.path("properties")), wrong);
            same(name + " required", required, texts(described.path("required")), wrong);
        });
        assertEquals(List.of(), wrong);
    }

    private static void same(String what, Set<String> ours, Set<String> described, List<String> wrong) {
        if (!ours.equals(described)) {
            wrong.add(what + ": " + ours + " is described as " + described);
        }
    }

    private static void visit(Type type, Map<String, Class<?>> records) {
        if (type instanceof ParameterizedType outer) {
            visit(outer.getActualTypeArguments()[0], records);
        } else if (type instanceof Class<?> known && known.isRecord() && known != Likely.class && known != Origin.class
            && records.putIfAbsent(SNAKE.translate(known.getSimpleName()), known) == null) {
            for (RecordComponent component : known.getRecordComponents()) {
                visit(component.getGenericType(), records);
            }
        }
    }

    private static Set<String> words(Class<?> type) {
        return new TreeSet<>(Arrays.stream(type.getEnumConstants()).map(Object::toString).toList());
    }

    private static Set<String> names(JsonNode object) {
        Set<String> names = new TreeSet<>();
        object.fieldNames().forEachRemaining(names::add);
        return names;
    }

    private static Set<String> texts(JsonNode array) {
        Set<String> texts = new TreeSet<>();
        array.forEach(each -> texts.add(each.asText()));
        return texts;
    }
}
