/** What is measured of an attempt: pure formulas over points, times and distances, each defined in docs/measures.md. */
package org.boardtopit.measures;
