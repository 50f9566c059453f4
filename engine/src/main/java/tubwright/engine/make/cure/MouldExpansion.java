// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

/**
 * The size to cut a mould to when it is cold, so that it has the size of the part, as the part will be, where the part
 * freezes: D_mould = D_part (1 + α_part ΔT)/(1 + α_mould ΔT). The part takes the mould's shape at the temperature at
 * which it gels or turns to glass and follows its own expansion from there.
 *
 * @param part expansion of the part in its plane, 1/K
 * @param mould expansion of the mould, 1/K
 * @param change temperature at which the part freezes less that at which the mould is cut, K
 */
public record MouldExpansion(double part, double mould, double change) {
    /** Cold size of the mould over the size of the part. */
    public double factor() {
        return (1 + part * change) / (1 + mould * change);
    }

    /** Cold size for a part of this size, in the unit of the size. */
    public double coldSize(double size) {
        return size * factor();
    }
}
