package org.boardtopit.report.tables;

/** A value from a short fixed list, with the word that stands for it in the tables. */
public interface Label {

    /** The word in the tables; never a spreadsheet formula. */
    String label();
}
