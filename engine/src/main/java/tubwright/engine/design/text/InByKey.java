// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.util.Map;
import tubwright.engine.quantity.Dimension;

/** A mapping of quantities whose keys are given by a table, each with its own dimension. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface InByKey {
    /** The table. */
    Class<? extends Keys> value();

    /** A table of keys. */
    interface Keys {
        /** Key to meaning, in the order of the manual. */
        Map<String, Meaning> keys();

        /** The table of an annotation. */
        static Map<String, Meaning> of(InByKey annotation) {
            try {
                var constructor = annotation.value().getDeclaredConstructor();
                constructor.setAccessible(true);
                return constructor.newInstance().keys();
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException("cannot build " + annotation.value(), e);
            }
        }
    }

    /**
     * What a key stands for.
     *
     * @param dimension what it measures
     * @param positive whether it must be greater than zero
     * @param says what it means
     */
    record Meaning(Dimension dimension, boolean positive, String says) {}
}
