// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.lang.annotation.ElementType;
import java.lang.annotation.Repeatable;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** A record needs a choice among optional keys: exactly one of them, at least one, or at most one. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.TYPE)
@Repeatable(Choose.All.class)
public @interface Choose {
    /** The keys to choose from. */
    String[] value();

    /** True if several may stand side by side. */
    boolean several() default false;

    /** False if none need be there: keys that only exclude each other. */
    boolean needed() default true;

    /** Several choices on one record. */
    @Retention(RetentionPolicy.RUNTIME)
    @Target(ElementType.TYPE)
    @interface All {
        /** The choices. */
        Choose[] value();
    }
}
