// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import tubwright.engine.quantity.Dimension;

/** What a quantity measures; any unit that fits may be written. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface In {
    /** The dimension. */
    Dimension value();

    /** True if the value must be greater than zero. */
    boolean positive() default false;
}
