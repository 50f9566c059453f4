// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import static tubwright.desk.text.Conversions.perDegree;

import java.util.Locale;
import tubwright.desk.answer.ExchangeAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.engine.rig.explain.LayupForecast;
import tubwright.engine.trim.ExchangeCurve;

/** The curve of mass against stiffness as comma-separated values (RFC 4180), units in the headings. */
public final class ExchangeCsv {
    private ExchangeCsv() {}

    /** The whole file: the points first, then what there is. */
    public static String write(ExchangeAnswer answer) {
        StiffnessUnit unit = answer.unit();
        String u = unit.text();
        StringBuilder text = new StringBuilder("what,stiffness asked (" + u
                + "),mass (kg),no lighter than (kg),stiffness at least (" + u + "),at most (" + u
                + "),as built between sections (N·m/deg),± 95 % (N·m/deg)\r\n");
        for (int k = 0; k < answer.curve().points().size(); k++) {
            ExchangeCurve.Point point = answer.curve().points().get(k);
            text.append("point,")
                    .append(number(unit.of(point.asked())))
                    .append(',')
                    .append(number(point.found().mass()))
                    .append(',')
                    .append(number(point.found().bound()))
                    .append(',')
                    .append(number(unit.of(point.reached().low())))
                    .append(',')
                    .append(number(unit.of(point.reached().high())))
                    .append(asBuilt(answer, k))
                    .append("\r\n");
        }
        for (ExchangeCurve.Reading reading : answer.readings()) {
            text.append("mass,,")
                    .append(number(reading.mass()))
                    .append(",,")
                    .append(reading.stiffest()
                            .map(p -> number(unit.of(p.reached().low())))
                            .orElse(""))
                    .append(',')
                    .append(Double.isFinite(reading.atMost()) ? number(unit.of(reading.atMost())) : "")
                    .append(",,\r\n");
        }
        for (ExchangeAnswer.Mark mark : answer.marks()) {
            String stiffness = number(unit.of(mark.stiffness()));
            text.append('"')
                    .append(mark.name().replace("\"", "\"\""))
                    .append("\",,")
                    .append(number(mark.mass()))
                    .append(",,")
                    .append(stiffness)
                    .append(',')
                    .append(stiffness)
                    .append(",,\r\n");
        }
        return text.toString();
    }

    private static String asBuilt(ExchangeAnswer answer, int point) {
        if (answer.foretold().isEmpty()) {
            return ",,";
        }
        LayupForecast.Foretold foretold = answer.foretold().get(point);
        return "," + number(perDegree(foretold.stiffness())) + "," + number(perDegree(foretold.expanded()));
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.4f", value);
    }
}
