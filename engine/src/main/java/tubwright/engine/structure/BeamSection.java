// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.Optional;
import tubwright.engine.joint.BarStrength;

/**
 * Section and material of a straight {@link Beam}, about its centroid, in the beam's own y and z.
 *
 * @param youngsModulus Pa
 * @param shearModulus Pa
 * @param density kg/m³
 * @param area m²
 * @param inertiaY ∫z² dA, for bending that moves the beam along its z, m⁴
 * @param inertiaZ ∫y² dA, for bending that moves the beam along its y, m⁴
 * @param torsionConstant Saint-Venant torsion constant, m⁴
 * @param shearAreaY area that carries shear along y, m²; positive infinity for no shear flexibility
 * @param shearAreaZ the same along z, m²
 * @param strength what it bears; empty where only its stiffness is known
 */
public record BeamSection(
        double youngsModulus,
        double shearModulus,
        double density,
        double area,
        double inertiaY,
        double inertiaZ,
        double torsionConstant,
        double shearAreaY,
        double shearAreaZ,
        Optional<BarStrength> strength) {

    public BeamSection {
        if (!(youngsModulus > 0) || !(shearModulus > 0) || !(area > 0) || !(density >= 0)) {
            throw new IllegalArgumentException("a beam section needs positive moduli and area; check its values");
        }
        if (!(inertiaY >= 0) || !(inertiaZ >= 0) || !(torsionConstant >= 0) || !(shearAreaY > 0) || !(shearAreaZ > 0)) {
            throw new IllegalArgumentException(
                    "second moments and torsion constant of a beam section must not be negative, shear areas positive");
        }
    }

    /** A section of which only the stiffness is known. */
    public BeamSection(
            double youngsModulus,
            double shearModulus,
            double density,
            double area,
            double inertiaY,
            double inertiaZ,
            double torsionConstant,
            double shearAreaY,
            double shearAreaZ) {
        this(
                youngsModulus,
                shearModulus,
                density,
                area,
                inertiaY,
                inertiaZ,
                torsionConstant,
                shearAreaY,
                shearAreaZ,
                Optional.empty());
    }

    /** Section of a stiffener: y lies in the surface, z along its normal; slender, so without shear flexibility. */
    public static BeamSection of(Stiffener.Section s) {
        return new BeamSection(
                s.youngsModulus(),
                s.shearModulus(),
                s.density(),
                s.area(),
                s.inertiaAcross(),
                s.inertiaIn(),
                s.torsionConstant(),
                Double.POSITIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                s.strength());
    }

    /** Solid rectangle, width along y and height along z; shear factor 5/6, torsion after Saint-Venant's series. */
    public static BeamSection rectangle(
            double youngsModulus, double shearModulus, double density, double width, double height) {
        double a = Math.max(width, height);
        double b = Math.min(width, height);
        double sum = 0;
        for (int n = 1; n < 40; n += 2) {
            sum += Math.tanh(n * Math.PI * a / (2 * b)) / Math.pow(n, 5);
        }
        double j = a * b * b * b * (1.0 / 3 - 64 / Math.pow(Math.PI, 5) * b / a * sum);
        double area = width * height;
        return new BeamSection(
                youngsModulus,
                shearModulus,
                density,
                area,
                area * height * height / 12,
                area * width * width / 12,
                j,
                area * 5 / 6,
                area * 5 / 6);
    }
}
