// SPDX-License-Identifier: Apache-2.0
/** Designs of free shape drawn at random, and the laws that the answer to any of them must obey. */
package tubwright.engine.verification.random;
