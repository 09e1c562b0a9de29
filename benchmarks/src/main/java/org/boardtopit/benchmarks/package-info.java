/** Benchmarks of single steps; DEVELOPERS.md tells how to run them. */
package org.boardtopit.benchmarks;
