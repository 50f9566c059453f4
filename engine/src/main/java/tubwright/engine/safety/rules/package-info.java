// SPDX-License-Identifier: Apache-2.0
/**
 * Rule sets of sanctioning bodies as data, held against a tub clause by clause: panels in bending, punched skins, points that
 * carry, pads that push, impacts. What a clause asks for that cannot be computed is said, never passed over.
 */
package tubwright.engine.safety.rules;
