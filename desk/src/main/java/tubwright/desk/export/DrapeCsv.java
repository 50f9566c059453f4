// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.Locale;
import tubwright.desk.answer.DrapeAnswer;
import tubwright.engine.make.flat.Distortion;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.make.ply.LaidPly;

/** A line a ply as comma-separated values (RFC 4180), units in the headings. */
public final class DrapeCsv {
    private DrapeCsv() {}

    /** The whole file. */
    public static String write(DrapeAnswer answer) {
        StringBuilder text = new StringBuilder(1 << 14);
        text.append("ply,piece,step,material,angle (deg),patch,area (m²),largest shear (deg),mean shear (deg),")
                .append("wants care (cm²),locked (cm²),not reached (cm²),largest turn (deg),mean turn (deg),")
                .append("thickness factor,steering radius (m),widest tape (mm),flat length (mm),flat width (mm),")
                .append("flat area (m²),flat longest (%),flat shortest (%),advice\r\n");
        for (DrapedPly each : answer.laid().plies()) {
            LaidPly ply = each.ply();
            DrapedPly.Figures f = each.figures();
            Distortion d = each.flat().distortion();
            text.append(quoted(ply.name())).append(',').append(quoted(ply.piece()));
            text.append(',')
                    .append(ply.sequence())
                    .append(',')
                    .append(quoted(ply.material().name()));
            number(text, Math.toDegrees(ply.angle()), 1);
            text.append(',').append(quoted(ply.patch()));
            number(text, f.area(), 4);
            number(text, Math.toDegrees(f.largestShear()), 2);
            number(text, Math.toDegrees(f.meanShear()), 2);
            number(text, 1e4 * f.warned(), 1);
            number(text, 1e4 * f.locked(), 1);
            number(text, 1e4 * f.bare(), 1);
            number(text, Math.toDegrees(f.largestTurn()), 2);
            number(text, Math.toDegrees(f.meanTurn()), 2);
            number(text, f.thickness(), 4);
            number(text, f.steering().map(DrapedPly.Steering::radius).orElse(Double.NaN), 2);
            number(text, 1e3 * f.steering().map(DrapedPly.Steering::widest).orElse(Double.NaN), 1);
            number(text, 1e3 * each.flat().length(), 1);
            number(text, 1e3 * each.flat().width(), 1);
            number(text, each.flat().area(), 4);
            number(text, 100 * d.longest(), 2);
            number(text, 100 * d.shortest(), 2);
            text.append(',').append(quoted(String.join("; ", each.advice()))).append("\r\n");
        }
        return text.toString();
    }

    private static void number(StringBuilder text, double value, int decimals) {
        text.append(',').append(Double.isFinite(value) ? String.format(Locale.ROOT, "%." + decimals + "f", value) : "");
    }

    private static String quoted(String cell) {
        return cell.matches("[^\",\r\n]*") ? cell : '"' + cell.replace("\"", "\"\"") + '"';
    }
}
