// SPDX-License-Identifier: Apache-2.0
/**
 * Tests of specimens: panels in bending, coupons in tension, skins punched through; from load and movement to the values a
 * material card carries, with their scatter. Knows readings, laminates as beams and statistics; nothing of tubs.
 */
package tubwright.engine.rig.specimen;
