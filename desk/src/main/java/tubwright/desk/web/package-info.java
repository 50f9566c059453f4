// SPDX-License-Identifier: Apache-2.0
/**
 * The way between an open project and the page in the browser: a server that only this machine reaches, who may ask it,
 * what may be asked, and the description of that interface. Knows nothing of structures.
 */
package tubwright.desk.web;
