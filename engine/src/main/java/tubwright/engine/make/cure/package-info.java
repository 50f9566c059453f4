// SPDX-License-Identifier: Apache-2.0
/**
 * Cure: how fast a resin hardens, how hot a thick place becomes in a given cycle, what degree of cure and glass
 * transition it ends with, what pressure voids and core ask for; spring-in of bends and the cold size of moulds. Knows
 * materials and laminates; nothing of the design document and of shapes.
 */
package tubwright.engine.make.cure;
