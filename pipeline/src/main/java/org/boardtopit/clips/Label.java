package org.boardtopit.clips;

/** A value from a short fixed list, with the word that stands for it in sheets and tables. */
public interface Label {

    /** The word in the tables; never a spreadsheet formula. */
    String label();
}
