// SPDX-License-Identifier: Apache-2.0
/**
 * The plies, films and cores of a tub as a shop lays them: cut pieces that run through zones. Knows the tub and its meshes;
 * knows nothing of how they drape or what they are cut from.
 */
package tubwright.engine.make.ply;
