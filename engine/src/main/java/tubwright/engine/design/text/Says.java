// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** What a key (or a whole record) means, in one or two sentences: shown by editors, printed in the manual. */
@Retention(RetentionPolicy.RUNTIME)
@Target({ElementType.RECORD_COMPONENT, ElementType.TYPE, ElementType.FIELD})
public @interface Says {
    /** The sentences. */
    String value();
}
