// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.io.IOException;
import java.nio.file.Files;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import tubwright.desk.answer.DrapeAnswer;
import tubwright.desk.answer.PackAnswer;
import tubwright.engine.design.Design;
import tubwright.engine.make.kit.CutPiece;
import tubwright.engine.make.kit.KitNest;
import tubwright.engine.make.kit.ShopData;
import tubwright.engine.make.nest.NestException;
import tubwright.engine.make.nest.Nester;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.structure.Tub;

/** Gathers what goes to an outside shop. */
public final class PackWork {
    private static final long SEED = 1;

    private PackWork() {}

    /**
     * What is asked.
     *
     * @param on which variant
     * @param issue letter or number
     * @param date of the issue
     * @param shop rolls that patterns are cut from
     * @param run how many tubs from when on
     * @param moves of single patterns to spend on each kit
     */
    public record Request(
            TrimWork.Request on, String issue, String date, ShopData shop, BuildWork.Request run, long moves) {}

    /** Lays every ply and puts its pattern on a roll. */
    public static PackAnswer pack(Design design, Request request, String version, Workbench.Listener listener)
            throws IOException {
        DrapeAnswer draped = DrapeWork.drape(design, request.on, false, request.date, version, listener);
        listener.stage("patterns on the rolls");
        List<CutPiece> pieces;
        List<KitNest> kits;
        try {
            pieces = CutPiece.of(draped.laid().plies(), request.shop.rolls());
            kits = KitNest.of(
                    pieces.stream().map(CutPiece::cut).toList(),
                    request.shop.rolls(),
                    SEED,
                    request.moves,
                    heard(listener));
        } catch (NestException refused) {
            throw new UserMistake(refused.getMessage());
        }
        Tub tub = draped.laid().tub();
        return new PackAnswer(
                design.name(),
                draped.variant(),
                request.issue,
                request.date,
                fingerprint(design),
                draped.laid(),
                request.shop,
                pieces,
                kits,
                BuildWork.build(draped.laid(), pieces, kits, request.shop.times(), request.run),
                laminates(tub, draped.laid().mesh()),
                version);
    }

    private static Nester.Listener heard(Workbench.Listener listener) {
        return (length, utilisation, moves, most) -> listener.stage(
                "roll used " + Math.round(1e3 * length) + " mm, " + Math.round(100 * utilisation) + " % of it");
    }

    private static String fingerprint(Design design) throws IOException {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(design.file()));
            return HexFormat.of().formatHex(digest).substring(0, 16);
        } catch (NoSuchAlgorithmException none) {
            throw new IllegalStateException("every Java has SHA-256", none);
        }
    }

    /** Mass of the laminates by the areas of the mesh, kg. */
    private static double laminates(Tub tub, Mesh mesh) {
        double mass = 0;
        for (int e = 0; e < mesh.elementCount(); e++) {
            mass += mesh.area(e) * tub.laminate(mesh.region(e)).arealMass();
        }
        return mass;
    }
}
