// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.text.YamlReader;
import tubwright.engine.make.build.BuildShop;
import tubwright.engine.make.data.DataException;
import tubwright.engine.make.kit.ShopData;

/**
 * Rolls and rates: those beside the design, or the shipped ones.
 *
 * @param data what they are
 * @param build how the shop works, waits and charges
 * @param inputs the design's file, and that of the data if there is one
 */
record ShopFile(ShopData data, BuildShop build, List<Path> inputs) {
    private static final String OWN = "shop.yaml";

    /** Reads them. */
    static ShopFile beside(Path design) throws IOException {
        Path own = design.toAbsolutePath().resolveSibling(OWN);
        if (!Files.exists(own)) {
            return new ShopFile(ShopData.shipped(), BuildShop.shipped(), List.of(design));
        }
        try {
            String text = YamlReader.contents(own);
            return new ShopFile(
                    ShopData.read(own.toString(), text), BuildShop.read(own.toString(), text), List.of(design, own));
        } catch (DataException e) {
            throw new UserMistake(e.getMessage());
        }
    }
}
