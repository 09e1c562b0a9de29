/** Two attempts beside each other: which instants belong together, where both athletes are on one runway, which numbers differ. */
package org.boardtopit.report.comparison;
