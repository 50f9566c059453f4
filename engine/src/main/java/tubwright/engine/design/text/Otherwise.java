// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** The value taken when a key is left out, as it would be written. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface Otherwise {
    /** As it would be written. */
    String value();

    /** Where the value comes from, if it needs saying. */
    String origin() default "";
}
