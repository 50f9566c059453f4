// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.web;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.page.BinaryDocument;
import tubwright.desk.page.Meaning;

/**
 * The description of the interface, an OpenAPI 3.1 document (OpenAPI Initiative 2021), made from the routes and the
 * records they take and give. The page's types are generated from it.
 */
final class Description {
    private final Map<String, Object> schemas = new TreeMap<>();
    private final Map<String, Class<?>> described = new TreeMap<>();

    private Description() {}

    /** The document of these routes. */
    static String of(List<Route> routes) {
        return new Description().write(routes);
    }

    private String write(List<Route> routes) {
        Map<String, Object> paths = new LinkedHashMap<>();
        for (Route route : routes) {
            @SuppressWarnings("unchecked")
            Map<String, Object> at =
                    (Map<String, Object>) paths.computeIfAbsent(route.path(), _ -> new LinkedHashMap<>());
            at.put(route.method().equals("GET") ? "get" : "post", operation(route));
        }
        schema(BinaryDocument.Entry.class);
        Map<String, Object> document = new LinkedHashMap<>();
        document.put("openapi", "3.1.0");
        document.put(
                "info",
                ordered(
                        "title",
                        "Tubwright page",
                        "version",
                        "1",
                        "description",
                        "What the page asks of the program. SI units."));
        document.put("paths", paths);
        Map<String, Object> components = new LinkedHashMap<>();
        components.put("schemas", schemas);
        components.put("securitySchemes", Map.of("token", ordered("type", "http", "scheme", "bearer")));
        document.put("components", components);
        document.put("security", List.of(Map.of("token", List.of())));
        return JsonMapper.builder()
                        .enable(SerializationFeature.INDENT_OUTPUT)
                        .build()
                        .writeValueAsString(document)
                        .replace("\r\n", "\n")
                + "\n";
    }

    private Map<String, Object> operation(Route route) {
        Map<String, Object> operation = new LinkedHashMap<>();
        operation.put("operationId", route.name());
        operation.put("summary", route.summary());
        if (!route.parameters().isEmpty()) {
            operation.put(
                    "parameters",
                    route.parameters().stream()
                            .map(p -> ordered(
                                    "name", p, "in", "query", "required", true, "schema", Map.of("type", "string")))
                            .toList());
        }
        if (route.takes() != Route.Nothing.class) {
            operation.put(
                    "requestBody",
                    ordered("required", true, "content", Map.of(Reply.JSON, Map.of("schema", schema(route.takes())))));
        }
        Map<String, Object> responses = new LinkedHashMap<>();
        responses.put("200", ordered("description", "done", "content", content(route)));
        responses.put(
                "default",
                ordered(
                        "description",
                        "not done",
                        "content",
                        Map.of(Reply.JSON, Map.of("schema", schema(Refusal.class)))));
        operation.put("responses", responses);
        return operation;
    }

    private Map<String, Object> content(Route route) {
        Map<String, Object> bytes = Map.of("schema", ordered("type", "string", "format", "binary"));
        return switch (route.form()) {
            case ONE -> Map.of(Reply.JSON, Map.of("schema", schema(route.gives())));
            case LIST -> Map.of(Reply.JSON, Map.of("schema", ordered("type", "array", "items", schema(route.gives()))));
            case BINARY -> {
                schema(route.gives());
                yield Map.of(Reply.BINARY, bytes);
            }
            case EVENTS -> Map.of("text/event-stream", Map.of("schema", schema(route.gives())));
            case FILE -> Map.of("*/*", bytes);
        };
    }

    private Map<String, Object> schema(Type type) {
        if (type instanceof ParameterizedType of) {
            Type inner = of.getActualTypeArguments()[0];
            return of.getRawType() == Optional.class ? schema(inner) : ordered("type", "array", "items", schema(inner));
        }
        Class<?> plain = (Class<?>) type;
        if (plain == String.class) {
            return ordered("type", "string");
        }
        if (plain == boolean.class || plain == Boolean.class) {
            return ordered("type", "boolean");
        }
        if (plain == int.class || plain == Integer.class || plain == long.class) {
            return ordered("type", "integer");
        }
        if (plain == double.class || plain == Double.class) {
            return ordered("type", "number");
        }
        if (plain.isArray()) {
            return ordered("type", "array", "items", schema(plain.getComponentType()));
        }
        if (plain.isEnum() || plain.isRecord()) {
            String name = plain.getSimpleName();
            if (described.putIfAbsent(name, plain) instanceof Class<?> other && other != plain) {
                throw new IllegalArgumentException(plain + " and " + other + " would have one name");
            }
            if (!schemas.containsKey(name)) {
                schemas.put(name, Map.of());
                schemas.put(name, plain.isEnum() ? choice(plain) : object(plain));
            }
            return ordered("$ref", "#/components/schemas/" + name);
        }
        throw new IllegalArgumentException("no way to describe " + type);
    }

    private static Map<String, Object> choice(Class<?> type) {
        return ordered(
                "type",
                "string",
                "enum",
                Arrays.stream(type.getEnumConstants())
                        .map(c -> ((Enum<?>) c).name())
                        .toList());
    }

    private Map<String, Object> object(Class<?> type) {
        Map<String, Object> properties = new LinkedHashMap<>();
        RecordComponent[] components = type.getRecordComponents();
        for (RecordComponent component : components) {
            Map<String, Object> schema = schema(component.getGenericType());
            Meaning meaning = component.getAnnotation(Meaning.class);
            if (meaning != null) {
                schema = new LinkedHashMap<>(schema);
                schema.put("description", meaning.value());
            }
            properties.put(component.getName(), schema);
        }
        Map<String, Object> object = ordered("type", "object");
        Meaning meaning = type.getAnnotation(Meaning.class);
        if (meaning != null) {
            object.put("description", meaning.value());
        }
        object.put("properties", properties);
        object.put(
                "required",
                Arrays.stream(components)
                        .filter(c -> c.getType() != Optional.class)
                        .map(RecordComponent::getName)
                        .toList());
        object.put("additionalProperties", false);
        return object;
    }

    /** A map that keeps its order, from keys and values in turn. */
    private static Map<String, Object> ordered(Object... entries) {
        Map<String, Object> map = new LinkedHashMap<>();
        for (int i = 0; i < entries.length; i += 2) {
            map.put((String) entries[i], entries[i + 1]);
        }
        return map;
    }
}
