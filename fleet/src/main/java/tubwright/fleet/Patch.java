// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.util.List;

/**
 * One value of a design document put in place of another.
 *
 * @param path keys from the top of the document; a place in a list by its number from 0: {@code shape, frames, 3, outline}
 * @param value as it would be written
 */
public record Patch(List<String> path, String value) {
    public Patch {
        path = List.copyOf(path);
    }
}
