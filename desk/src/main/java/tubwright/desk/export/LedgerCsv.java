// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.Locale;
import java.util.Optional;
import tubwright.desk.answer.LedgerAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.engine.trim.Guard;
import tubwright.engine.trim.LedgerEntry;
import tubwright.engine.trim.Owner;

/** A ledger as comma-separated values (RFC 4180), units in the headings. */
public final class LedgerCsv {
    private LedgerCsv() {}

    /** The whole file. */
    public static String write(LedgerAnswer answer) {
        StiffnessUnit unit = answer.unit();
        String u = unit.text();
        StringBuilder text = new StringBuilder(1 << 14);
        text.append("of,name,layer,what,material,angle (deg),mass (g),stiffness lost (")
                .append(u)
                .append("),lost per mass (")
                .append(u)
                .append("/kg),stiffness left at least (")
                .append(u)
                .append("),at most,without solving at least (")
                .append(u)
                .append("),at most,lowest reserve factor,without it,in load case,by,lowest buckling factor,without it,")
                .append("in load case,mode in\r\n");
        for (LedgerEntry e : answer.ledger().entries()) {
            text.append(
                            switch (e.owner()) {
                                case Owner.Zone _ -> "zone";
                                case Owner.Patch _ -> "patch";
                                case Owner.Joint _ -> "joint";
                            })
                    .append(',')
                    .append(quoted(e.owner().name()))
                    .append(',')
                    .append(e.place() == 0 ? "" : Integer.toString(e.place()))
                    .append(',')
                    .append(quoted(LedgerAnswer.words(e)))
                    .append(',')
                    .append(quoted(e.material()))
                    .append(',')
                    .append(e.kind() == LedgerEntry.Kind.PLY ? number(e.degrees(), 1) : "")
                    .append(',')
                    .append(number(1000 * e.mass(), 2))
                    .append(',')
                    .append(number(unit.of(e.lost()), 4))
                    .append(',')
                    .append(e.mass() > 0 ? number(unit.of(e.lostPerKilogram()), 2) : "")
                    .append(',')
                    .append(number(unit.of(e.solved().low()), 4))
                    .append(',')
                    .append(number(unit.of(e.solved().high()), 4))
                    .append(',')
                    .append(number(unit.of(e.firstOrder().low()), 4))
                    .append(',')
                    .append(number(unit.of(e.firstOrder().high()), 4))
                    .append(guard(e.lowestReserve()))
                    .append(guard(e.lowestBuckling()))
                    .append("\r\n");
        }
        return text.toString();
    }

    private static String guard(Optional<Guard> guard) {
        return guard.map(g -> "," + number(g.before(), 4) + "," + number(g.after(), 4) + "," + quoted(g.load()) + ","
                        + quoted(g.what()))
                .orElse(",,,,");
    }

    private static String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    private static String quoted(String text) {
        return text.matches("[^,\"\r\n]*") ? text : "\"" + text.replace("\"", "\"\"") + "\"";
    }
}
