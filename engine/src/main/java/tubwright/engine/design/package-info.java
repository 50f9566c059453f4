// SPDX-License-Identifier: Apache-2.0
/**
 * The design document: what a designer may write (the {@code ...Text} records), what the names in it stand for, and the
 * tub each variant of it describes.
 *
 * <p>A {@link tubwright.engine.design.Design} is read with {@link tubwright.engine.design.Design#read}; whatever is
 * wrong with the text ends in one {@link tubwright.engine.design.text.DesignError} that names file, line and column.
 */
package tubwright.engine.design;
