/**
 * The person detector and the landmark networks: what they read, how sure they are, and the self-test that guards them.
 */
package org.boardtopit.models;
