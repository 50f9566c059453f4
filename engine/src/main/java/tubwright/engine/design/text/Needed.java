// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** A list that may not be left out; without this mark a missing list is an empty one. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface Needed {}
