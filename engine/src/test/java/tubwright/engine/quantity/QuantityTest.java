// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is read and written at the border. Factors follow the 1959 international yard and pound and 9.80665 m/s². */
class QuantityTest {
    @ParameterizedTest
    @CsvSource({
        "120 mm, LENGTH, 0.12",
        "2.5 in, LENGTH, 0.0635",
        "3/16 in, LENGTH, 0.0047625",
        "1 1/2 in, LENGTH, 0.0381",
        "-5.5mm, LENGTH, -0.0055",
        "−5.5 mm, LENGTH, -0.0055",
        "18 kN·m/deg, TORSIONAL_STIFFNESS, 1031324.0312354818",
        "18 kN.m/deg, TORSIONAL_STIFFNESS, 1031324.0312354818",
        "18 kN*m/°, TORSIONAL_STIFFNESS, 1031324.0312354818",
        "18 kNm/deg, TORSIONAL_STIFFNESS, 1031324.0312354818",
        "1 lbf·ft/deg, TORSIONAL_STIFFNESS, 77.68264622747554",
        "1 lbf-ft/deg, TORSIONAL_STIFFNESS, 77.68264622747554",
        "1 ft·lbf/deg, TORSIONAL_STIFFNESS, 77.68264622747554",
        "5 Nm, MOMENT, 5",
        "5 N m, MOMENT, 5",
        "5 N·mm, MOMENT, 0.005",
        "5 Nmm, MOMENT, 0.005",
        "70 GPa, PRESSURE, 7e10",
        "70 kN/mm², PRESSURE, 7e10",
        "1 psi, PRESSURE, 6894.757293168361",
        "1 ksi, PRESSURE, 6894757.293168361",
        "1 Msi, PRESSURE, 6894757293.168361",
        "200 g/m², AREAL_DENSITY, 0.2",
        "200 g/m^2, AREAL_DENSITY, 0.2",
        "200 gsm, AREAL_DENSITY, 0.2",
        "1600 kg/m^3, DENSITY, 1600",
        "1600 kg/m3, DENSITY, 1600",
        "200 g/m2, AREAL_DENSITY, 0.2",
        "1.6 g/cm³, DENSITY, 1600",
        "3.1 lb/ft³, DENSITY, 49.657236459276454",
        "3.1 pcf, DENSITY, 49.657236459276454",
        "0.1 lb/in^3, DENSITY, 2767.990471",
        "177 °C, TEMPERATURE, 450.15",
        "177 degC, TEMPERATURE, 450.15",
        "350 °F, TEMPERATURE, 449.8166666667",
        "293.15 K, TEMPERATURE, 293.15",
        "-150 K, TEMPERATURE_DIFFERENCE, -150",
        "-150 °C, TEMPERATURE_DIFFERENCE, -150",
        "18 °F, TEMPERATURE_DIFFERENCE, 10",
        "-1e-6 /K, EXPANSION, -1e-6",
        "23e-6 1/K, EXPANSION, 23e-6",
        "23e-6/°C, EXPANSION, 23e-6",
        "23 1e-6/K, EXPANSION, 23e-6",
        "23 µm/m/K, EXPANSION, 23e-6",
        "13e-6 /°F, EXPANSION, 23.4e-6",
        "5 %, DIMENSIONLESS, 0.05",
        "0.3, DIMENSIONLESS, 0.3",
        "30 g, ACCELERATION, 294.1995",
        "30 g, MASS, 0.03",
        "1 lbf, FORCE, 4.4482216152605",
        "90 deg, ANGLE, 1.5707963267948966",
        "90°, ANGLE, 1.5707963267948966",
        "2 °C/min, TEMPERATURE_RATE, 0.0333333333333",
        "1 N/mm, FORCE_PER_LENGTH, 1000",
        "220 J/m², TOUGHNESS, 220",
        "1 mm/N, FLEXIBILITY, 0.001",
        "1 N·m²/(rad), TORSIONAL_RIGIDITY, 1"
    })
    void aQuantityIsReadIntoSi(String text, Dimension dimension, double si) {
        double read = Quantity.parse(text, dimension).si();
        assertEquals(si, read, 1e-9 * Math.abs(si));
    }

    @Test
    void everyUsualUnitIsAUnitOfItsDimension() {
        for (Dimension dimension : Dimension.values()) {
            for (String unit : dimension.usualUnits()) {
                assertTrue(dimension.accepts(Unit.of(unit)), dimension + " " + unit);
            }
        }
    }

    @Test
    void aMessageSaysWhatWasReadAndWhatWouldBeRight() {
        QuantityException wrongKind =
                assertThrows(QuantityException.class, () -> Quantity.parse("120 kg", Dimension.LENGTH));
        assertEquals("120 kg", wrongKind.read());
        assertEquals(4, wrongKind.position());
        assertTrue(wrongKind.suitableUnits().contains("mm"));
        assertEquals(
                "cannot read '120 kg': 'kg' measures mass; a length is wanted; units that fit: mm, m, in",
                wrongKind.getMessage());
    }

    @ParameterizedTest
    @CsvSource({
        "5 KN, FORCE, kN",
        "5 Gpa, PRESSURE, GPa",
        "5 kN·m/dge, TORSIONAL_STIFFNESS, kN·m/deg",
        "5 lb·ft, MOMENT, lbf·ft",
        "5 mPa·m, MOMENT, ''",
    })
    void aSlipIsAnsweredWithTheNearestUnit(String text, Dimension dimension, String nearest) {
        QuantityException slip = assertThrows(QuantityException.class, () -> Quantity.parse(text, dimension));
        assertEquals(nearest, slip.nearestUnit().orElse(""));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''|empty",
                "mm|number",
                "120|unit is missing",
                "12,000 N|comma",
                "12 000 N|two numbers",
                "1e999 mm|not finite",
                "NaN mm|number",
                "1 mm)|not expected",
                "1 (mm|not closed",
                "1 mm^99|power",
                "1 mm/|ends",
                "((((((((((((((((((((1|number",
                "1/0 mm|not finite",
                "2 mm°|another kind",
            })
    void aFaultyTextIsRefusedWithItsReason(String text, String reason) {
        QuantityException fault =
                assertThrows(QuantityException.class, () -> Quantity.parse(text == null ? "" : text, Dimension.LENGTH));
        assertTrue(fault.getMessage().contains(reason), fault.getMessage());
    }

    @Test
    void temperaturesBelowAbsoluteZeroAreRefused() {
        assertThrows(QuantityException.class, () -> Quantity.parse("-300 °C", Dimension.TEMPERATURE));
    }

    @ParameterizedTest
    @CsvSource({
        "18.234 kN·m/deg, TORSIONAL_STIFFNESS, 18.23 kN·m/deg",
        "0.131 mm, LENGTH, 0.1310 mm",
        "2500 mm, LENGTH, 2.500 m",
        "0 mm, LENGTH, 0 mm",
        "23e-6 /K, EXPANSION, 23.00e-6 /K",
        "0 /K, EXPANSION, 0 /K",
        "0.3, DIMENSIONLESS, 0.3000",
    })
    void aQuantityIsWrittenReadably(String text, Dimension dimension, String written) {
        Quantity quantity = Quantity.parse(text, dimension);
        assertEquals(written, quantity.toString());
        assertEquals(
                quantity.si(), Quantity.parse(quantity.toString(), dimension).si(), 1e-3 * Math.abs(quantity.si()));
    }

    @Test
    void digitsAreSignificantDigits() {
        Quantity stiffness = Quantity.parse("12345 N·m/deg");
        assertEquals("12.3 kN·m/deg", stiffness.format("kN·m/deg", 3));
        assertEquals("9105 lbf·ft/deg", stiffness.format("lbf·ft/deg", 4));
        assertEquals("12000 N·m/deg", stiffness.format("N·m/deg", 2));
        assertEquals(Dimension.TORSIONAL_STIFFNESS, stiffness.dimension());
    }
}
