// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** What a value means and in which unit it is, for the description of the interface that the page is built against. */
@Retention(RetentionPolicy.RUNTIME)
@Target({ElementType.RECORD_COMPONENT, ElementType.TYPE})
public @interface Meaning {
    /** In a few words. */
    String value();
}
