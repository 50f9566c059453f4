// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.work.UserMistake;

/** Records to JSON and back; what is empty is left out. */
final class Json {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .changeDefaultPropertyInclusion(i -> i.withValueInclusion(JsonInclude.Include.NON_ABSENT))
            .build();

    private Json() {}

    static byte[] write(Object document) {
        return MAPPER.writeValueAsBytes(document);
    }

    static String text(Object document) {
        return MAPPER.writeValueAsString(document);
    }

    /** Reads a record, refusing what it has no place for. */
    static <T> T read(byte[] bytes, Class<T> type) {
        try {
            T value = MAPPER.readValue(bytes, type);
            if (value == null) {
                throw new UserMistake("the request has no content");
            }
            return value;
        } catch (JacksonException e) {
            throw new UserMistake("the request cannot be read: "
                    + e.getOriginalMessage()
                            .replaceAll(" \\(class [^)]*\\)|`?tubwright\\.[\\w.$]*\\.|, not marked as ignorable", ""));
        }
    }
}
